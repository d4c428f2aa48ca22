"""Two options, and where they change places."""
