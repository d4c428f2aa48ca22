"""A steel asked for by any name; beside a name that nothing carries stand the nearest."""

import streamlit as st

from ui import cached, held
from ui.labels import plain


def ask(label: str, key: str, width: int = 360) -> str:
    """Ask for a steel by any name.

    Parameters
    ----------
    label : str
        The question.
    key : str
        Of the widget.
    width : int
        In pixels.

    Returns
    -------
    str
        As typed; empty where nothing is.
    """
    kept = held.lasting(key, "")
    return str(st.text_input(label, width=width, max_chars=80, **kept)).strip()


def unknown(name: str, key: str, what: str = "No steel") -> None:
    """Say that nothing is called so, with the nearest names to take instead.

    Parameters
    ----------
    name : str
        What was asked for.
    key : str
        Of the widget that it was asked with.
    what : str
        What is not called so.
    """
    near = cached.catalog().look_up(name).near
    with st.container(horizontal=True, vertical_alignment="center", key=f"{key}/near"):
        asked = " Did you mean" if near else ""
        st.markdown(plain(f"{what} is called {name}.{asked}"), width="content")
        for other in near:
            st.button(
                plain(other), key=f"{key}/near/{other}", type="tertiary",
                on_click=held.fill_in, args=(key, other),
            )  # fmt: skip
