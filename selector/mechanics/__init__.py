"""Mechanics: loads, sections and hardness in; stresses and factors out."""
