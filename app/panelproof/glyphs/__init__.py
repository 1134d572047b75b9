"""Type at a pixel size: glyph bitmaps, metrics, kerning, and the fonts they come from."""
