"""paperwork."""
