"""chains."""
