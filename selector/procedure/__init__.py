"""How an option is done at the bench, step by step in the order of the work."""
