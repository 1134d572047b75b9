"""The sheet that hangs beside the bench: one PDF and one HTML page of a whole layout."""
