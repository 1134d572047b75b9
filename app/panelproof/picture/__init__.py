"""Pictures: what a part paints, frames, moments, steps from one moment to the next, images and sheets."""
