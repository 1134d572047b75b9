"""Panelproof: design, prove and hand over what a small screen shows."""

__version__ = "0.1.0"
