"""What a device really shows, beside what the layout says it should."""
