"""The library of methods that ours are held against, loaded by the first test that asks it.

It brings a plotting library with it: three seconds, which no other test need wait for.
"""

from importlib import import_module

import numpy as np


def matrix_of(merit, weights):
    """Return a table of the library, more being better in every column."""
    library = import_module("skcriteria")
    return library.mkdm(merit, [max] * np.shape(merit)[1], weights=weights)


def method(name):
    """Return a method by module and class: "topsis.TOPSIS"."""
    module, kind = name.split(".")
    return getattr(import_module(f"skcriteria.agg.{module}"), kind)()
