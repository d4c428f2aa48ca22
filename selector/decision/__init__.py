"""The decision: gates that an option must pass, criteria it is weighed by, and the ranking."""
