"""visits."""
