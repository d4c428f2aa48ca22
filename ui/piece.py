"""The few things every view shows alike."""

from collections.abc import Callable, Iterable
from html import escape

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from ui import labels

_READ_AS_FORM = frozenset("\\`*_{}[]()#+-!|$~:\n\r")


def bullets(texts: Iterable[str]) -> None:
    """Show sentences of the engine, taken literally, as a list."""
    st.markdown("\n".join(f"- {labels.plain(labels.titles(text))}" for text in texts))


def headline(text: str, longest: int) -> None:
    """Show what a view comes to as its title, set smaller where it is longer than `longest`.

    So it stands in about two lines, and what follows is still in sight.
    """
    with st.container(key="headline/long" if len(text) > longest else "headline"):
        st.title(labels.plain(labels.unbroken(text)), anchor=False)


def small(text: str) -> None:
    """Show a text, taken literally, in small print."""
    st.caption(labels.plain(text))


def panel(name: str) -> DeltaGenerator:
    """Return a framed place of its own ground, as tall as those beside it."""
    return st.container(border=True, height="stretch", key=f"panel/{name}")


def markup(*parts: str) -> None:
    """Show markup of our own, drawings among it; every foreign text in it is escaped."""
    st.markdown(_one_block("".join(parts)), unsafe_allow_html=True)


def _one_block(text: str) -> str:
    """Return markup without the empty and indented lines that would end it as markup."""
    return "\n".join(line.strip() for line in text.splitlines() if line.strip())


def e(text: object) -> str:
    """Return a text so that no character of it is read as markup, nor as formatting."""
    return "".join(
        f"&#{ord(c)};" if c in _READ_AS_FORM else escape(c, quote=True) for c in str(text)
    )


def download(label: str, data: Callable[[], str], name: str) -> None:
    """Show a button that hands over a file, made when it is asked for and without a new run."""
    st.download_button(label, data, name, key=f"download/{name}", on_click="ignore")
