"""Requirement and catalogue resolved once: bench, rack, shape, demands, treatments."""
