"""Metallurgy: composition, temperature and time in; structure and hardness out."""
