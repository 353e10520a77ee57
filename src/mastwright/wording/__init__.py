"""wording."""
