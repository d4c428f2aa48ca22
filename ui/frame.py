"""What stands round every view: the look, and the way between the views with the part kept."""

from pathlib import Path
from urllib.parse import quote

import streamlit as st
from streamlit.navigation.page import StreamlitPage

from ui import session
from ui.piece import e, markup

_STYLE = Path(__file__).with_name("style.css")
# A bar hard at its end.
_BRAND = (
    "<p class='tw-brand'><svg viewBox='0 0 34 18' width='34' height='18' aria-hidden='true'>"
    "<path class='s-on' d='M1 2h11v14H1z'/><path class='s-pale' d='M12 5h20v8H12z'/>"
    "<path class='tw-axis' d='M0 9h34'/></svg> temperwright</p>"
)
# The same bar for the tab of the browser, on light and dark: an emoji would have a table of
# them all loaded before the first view.
ICON = "data:image/svg+xml," + quote(
    "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 34 34'>"
    "<path fill='#2f5480' d='M1 7h15v20H1z'/><path fill='#7694b4' d='M16 11h17v12H16z'/></svg>"
)
# Address, file and name of each view, in the order of the work.
_VIEWS = (
    ("start", "Start"),
    ("part", "Part"),
    ("choice", "The choice"),
    ("torch", "The torch"),
    ("head_to_head", "Head to head"),
    ("firm", "How firm"),
    ("bench", "At the bench"),
    ("customer", "For the customer"),
    ("workshop", "Your workshop"),
    ("steels", "Steels"),
)


def pages() -> dict[str, StreamlitPage]:
    """Return every view by the name of its file."""
    return {
        name: st.Page(
            file(name), title=title, url_path=name.replace("_", "-"), default=name == "start"
        )
        for name, title in _VIEWS
    }


def file(name: str) -> str:
    """Return the file of a view, from that of the page."""
    return f"views/{name}.py"


def link(name: str, label: str | None = None) -> None:
    """Show a link to a view of the part at hand.

    Parameters
    ----------
    name : str
        The view.
    label : str, optional
        Instead of its title.
    """
    st.page_link(file(name), label=label, query_params=_address())


def go(name: str) -> None:
    """Change to a view of the part at hand; nothing after this runs."""
    st.switch_page(file(name), query_params=_address())


def _address() -> dict[str, str]:
    """Return what the address carries beside the view."""
    visit = session.held_part()
    return {} if visit is None else {"part": visit.id}


def head(view: StreamlitPage) -> None:
    """Show the look, the part at hand, and the way between the views: a menu where narrow."""
    st.html(_STYLE)
    with st.container(horizontal=True, key="way", gap="small", vertical_alignment="center"):
        markup(_BRAND)
        # Another one for each view: it stood open over the view that was gone to from it.
        menu = st.container(key="menu", width="content")
        with menu, st.popover(view.title, key=f"menu/{view.url_path}"):
            for name, _ in _VIEWS:
                link(name)
        with st.container(horizontal=True, key="views", gap=None, width="content"):
            for name, title in _VIEWS:
                stands = "here" if view.title == title else "there"
                with st.container(key=f"way/{name}/{stands}", width="content"):
                    link(name)
        visit = session.held_part()
        part = {} if visit is None else visit.draft.get("part", {})
        name = e(part.get("name", ""))
        markup(f"<p class='tw-at' title='{name}'>{name}</p>")
    if session.parted():
        st.info(
            "This part was changed in another tab meanwhile. Here you go on with a copy; "
            "the other keeps what it has."
        )
