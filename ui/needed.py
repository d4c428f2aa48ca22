"""What the part asks, live beside the form: the drawing, and the answer of `need` under it."""

import streamlit as st

from selector.errors import SelectorError
from selector.need.record import NeedOut
from selector.wording import shown, shown_range
from ui import cached, piece
from ui.draft import Draft
from ui.labels import plain, upper
from ui.picture import so_far


def show(draft: Draft, drawing: str) -> None:
    """Show the drawing and what the part asks, as far as it is known.

    Parameters
    ----------
    draft : dict
        The form.
    drawing : str
        SVG, empty where there is none yet.
    """
    with st.container(border=True, key="panel/need"):
        st.header("Drawn as you type", anchor=False)
        if not drawing:
            piece.small("Give each section a size and a length, and it is drawn here.")
        piece.markup(drawing)
        found = _need(draft)
        if found is not None:
            st.markdown(f"**{plain(found.headline)}**")
            piece.markup(_lines(found))


def _need(draft: Draft) -> NeedOut | None:
    """Return what the part must bear; None while too little is known."""
    requirement = so_far(draft)
    if requirement is None:
        return None
    try:
        return cached.need(requirement)
    except SelectorError:
        return None


def _lines(found: NeedOut) -> str:
    """Return what zones and sections ask as the lines of a table."""
    rows = [
        (f"zone {zone.zone}", _window(zone.low_hrc or zone.floor_hrc, zone.high_hrc),
         f"{zone.depth_mm:g} mm deep" if zone.depth_mm else "")
        for zone in found.zones
    ]  # fmt: skip
    rows += [
        (item.name or f"section {item.section}", upper(item.text), "")
        for item in found.sections
    ]
    cells = "".join(
        f"<tr><th scope='row'>{piece.e(name)}</th><td>{piece.e(text)} {piece.e(more)}</td></tr>"
        for name, text, more in rows
    )
    said = "".join(f"<li>{piece.e(text)}</li>" for text in found.remarks)
    return f"<table class='tw-lines'>{cells}</table><ul class='tw-said'>{said}</ul>"


def _window(low: float | None, high: float | None) -> str:
    """Return a hardness window, either end open."""
    if low is None and high is None:
        return "no hardness asked"
    if low is None:
        return f"at most {shown(high or 0.0)}"
    return f"{shown(low)} or more" if high is None else shown_range(low, high)
