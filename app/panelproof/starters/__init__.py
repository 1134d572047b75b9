"""What a person finds in the box: panels in common use, and starters that adapt to them."""
