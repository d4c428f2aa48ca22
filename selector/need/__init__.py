"""What the part must bear, before any steel is named."""
