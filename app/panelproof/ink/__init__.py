"""Pixel masks and footprints: every pixel that some text of a content can ink."""
