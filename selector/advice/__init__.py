"""Ranked and reasoned advice: the pipeline, its sentences, its record."""
