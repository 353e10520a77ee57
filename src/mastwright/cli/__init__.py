"""The `mastwright` command: what was typed in, the rooms below called, the answer printed."""
