"""The parts that were worked on last, to go on with."""

import streamlit as st

from ui import frame, store
from ui.draft import read
from ui.fitting import fits
from ui.labels import plain
from ui.piece import small


def show() -> None:
    """Offer the parts that were worked on last."""
    parts = store.latest_parts(5)
    if not parts:
        return
    st.header("Go on with", anchor=False)
    for key, kept in parts:
        if not fits(kept.get("draft")):
            continue
        name = str(read(kept["draft"], "part.name") or "a part without a name")
        when = store.changed_at(key)
        with st.container(horizontal=True, vertical_alignment="center"):
            st.page_link(
                frame.file("part"),
                label=plain(name),
                query_params={"part": key},
                width="content",
            )
            if when is not None:
                small(f"{when.day} {when:%B, %H:%M}")
