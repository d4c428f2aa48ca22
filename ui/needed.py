"""What the part asks, live beside the form: the drawing, and the answer of `need` under it."""

import streamlit as st

from selector.errors import SelectorError
from selector.need.record import NeedOut
from ui import cached, piece
from ui.draft import Draft, called, read
from ui.labels import plain, upper
from ui.meanwhile import duties_open, so_far
from ui.picture import window

_UNSAID = "Say what it suffers, and how badly: how hard it must be then stands here."


def show(draft: Draft, drawing: str) -> None:
    """Show the drawing and what the part asks, as far as it is known.

    Parameters
    ----------
    draft : dict
        The form.
    drawing : str
        SVG, empty where there is none yet.
    """
    with piece.panel("need"):
        st.header("Drawn as you type", anchor=False)
        if not drawing:
            piece.small("Give each section a size and a length, and it is drawn here.")
        piece.markup(drawing)
        if drawing and duties_open(draft):
            piece.small(_UNSAID)
            return
        found = _need(draft)
        if found is not None:
            st.markdown(f"**{plain(found.headline)}**")
            piece.markup(_lines(found, draft))


def _need(draft: Draft) -> NeedOut | None:
    """Return what the part must bear; None while too little is known."""
    requirement = so_far(draft)
    if requirement is None:
        return None
    try:
        return cached.need(requirement)
    except SelectorError:
        return None


def _lines(found: NeedOut, draft: Draft) -> str:
    """Return what zones and sections ask as the lines of a table."""
    rows = [
        (_zone_name(draft, zone.zone),
         window(zone) + (f", {zone.depth_mm:g} mm deep" if zone.depth_mm else ""))
        for zone in found.zones
    ]  # fmt: skip
    borne: dict[str, list[str]] = {}
    for item in found.sections:
        borne.setdefault(upper(item.text), []).append(item.name or f"section {item.section}")
    rows += [(f"{', '.join(names)}: load", text) for text, names in borne.items()]
    cells = "".join(
        f"<tr><th scope='row'>{piece.e(name)}</th><td>{piece.e(text)}</td></tr>"
        for name, text in rows
    )
    said = "".join(f"<li>{piece.e(text)}</li>" for text in found.remarks)
    return f"<table class='tw-lines'>{cells}</table><ul class='tw-said'>{said}</ul>"


def _zone_name(draft: Draft, number: int) -> str:
    """Return what a zone is called: its name, else the names of its sections."""
    given = read(draft, f"zone.{number}.name")
    sections = read(draft, f"zone.{number}.section") or []
    names = [name for n, name in called(draft).items() if n in sections]
    return str(given or " and ".join(names) or f"zone {number}")
