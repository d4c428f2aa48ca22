"""Many parts at once: their list, each worked out by itself, and what they share."""
