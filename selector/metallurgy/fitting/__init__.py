"""Coefficients anew from published readings and bands: the `fit` command's own."""
