"""mast."""
