"""The document: one panel, its types, inks, screens and moments; reading, checking and writing its file."""
