"""What is computed once and kept: the catalogue, and the advice of recent requirements."""

from collections.abc import Callable

import streamlit as st

from catalog import Catalog, load_catalog
from selector import Requirement, advise
from selector.advice.output import advice_out
from selector.advice.record import AdviceOut


@st.cache_resource(show_spinner="Reading the catalogue")
def catalog() -> Catalog:
    """Return the shipped catalogue."""
    return load_catalog()


@st.cache_data(max_entries=32, show_spinner=False)
def advice(
    requirement: Requirement, _progress: Callable[[str, float], None] | None = None
) -> AdviceOut:
    """Return the advice on a requirement as plain data.

    Parameters
    ----------
    requirement : Requirement
        What is asked; the key of the cache.
    _progress : callable, optional
        Called with a sentence and a fraction while it computes; no part of the key.

    Returns
    -------
    AdviceOut
        All that the views show.
    """
    return advice_out(advise(requirement, catalog(), progress=_progress))
