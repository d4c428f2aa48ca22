"""Sentences: what the numbers mean, one module for each kind of question."""
