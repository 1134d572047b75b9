"""The proof: one rule a file, findings with the texts that show them, remedies."""
