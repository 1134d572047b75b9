"""Contents: the set of all texts that a field can ever show."""
