"""Hazards: what can go wrong in the heat: cracking, movement, decarburised skin."""
