"""The few things every view shows alike."""

from collections.abc import Iterable

import pandas as pd
import streamlit as st

from ui import labels


def table(frame: pd.DataFrame) -> None:
    """Show a table of texts."""
    st.table(frame, border="horizontal", hide_index=True)


def bullets(texts: Iterable[str]) -> None:
    """Show texts, taken literally, as a list."""
    st.markdown("\n".join(f"- {labels.plain(text)}" for text in texts))


def small(text: str) -> None:
    """Show a text, taken literally, in small print."""
    st.markdown(f":small[{labels.plain(text)}]")


def download(label: str, data: str, name: str) -> None:
    """Show a button that hands over a file without a new run."""
    st.download_button(label, data, name, key=f"download/{name}", on_click="ignore")
