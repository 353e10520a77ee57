"""verdict."""
