"""What the eye gets: luminance and contrast, colour-deficient sight, and visual angles."""
