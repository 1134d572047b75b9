"""The handover: one C header per layout, its drawing code, and what differs between two of them."""
