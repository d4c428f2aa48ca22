"""The parts that were worked on last, to go on with."""

import streamlit as st

from ui import frame, store
from ui.labels import plain


def show() -> None:
    """Offer the parts that were worked on last."""
    parts = store.latest_parts(5)
    if not parts:
        return
    st.header("Go on with", anchor=False)
    for key, kept in parts:
        name = str(kept.get("draft", {}).get("part", {}).get("name") or "a part without a name")
        st.page_link(frame.file("part"), label=plain(name), query_params={"part": key})
