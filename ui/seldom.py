"""What seldom decides: folded, and asked only when it is opened."""

from collections.abc import Callable

import streamlit as st

from ui import draft as drafts
from ui import held, labels, part_form, session
from ui.form import ask

_LOADS = ("load.bending", "load.axial", "load.contact", "load.impact_energy")
_PLACE = {
    "limit.service_temperature": 150, "limit.corrosion": 150, "limit.days": 150,
    "part.condition": 150, "part.shape_class": 150, "part.stock_removal": 180,
}  # fmt: skip
_FINISH = "part.finish_after"


def ask_all() -> None:
    """Ask it, each fold of it where it is open."""
    _folded("Holes, notches, edges", "features", {"part.feature"}, _features)
    title = "More about loads, place of use, condition, finish"
    _folded(title, "rest", {*_LOADS, *drafts.OVER, *_PLACE, _FINISH}, _loads_and_place)
    rows = range(1, len(drafts.rows(session.here().draft, "part.section")) + 1)
    _folded(
        "More about the sections", "sections", set().union(*map(_of_section, rows)), _sections
    )


def _folded(title: str, name: str, places: set[str], ask_them: Callable[[], None]) -> None:
    """Show a fold; a fault in it opens it."""
    wrong = any(
        at == place or at.startswith(f"{place}.") for at in held.wrong() for place in places
    )
    key = held.filled(f"{session.here().id}/more/{name}", wrong)
    with st.expander(title, key=key, on_change="rerun") as fold:
        if fold.open:
            ask_them()


def _features() -> None:
    """Ask for holes, notches and edges."""
    part_form.table("part.feature", {"kind": 150, "at": 190, "size": 110})


def _loads_and_place() -> None:
    """Ask for loads beside torque, the place of use, the condition and the finish."""
    with st.container(horizontal=True):
        for path in _LOADS:
            ask(path, width=150)
    called = drafts.called(session.here().draft)
    if len(called) > 1:
        with st.container(horizontal=True):
            for path in drafts.OVER:
                ask(path, width=300, choices=called)
    with st.container(horizontal=True):
        for path, width in _PLACE.items():
            ask(path, width=width)
    ask(_FINISH)


def _sections() -> None:
    """Ask the rest of each section and of the zone that begins on it."""
    for number, name in drafts.called(session.here().draft).items():
        st.markdown(f"**{labels.plain(name)}**")
        with st.container(horizontal=True):
            for path, width in _of_section(number).items():
                ask(path, width=width)


def _of_section(number: int) -> dict[str, int]:
    """Return the questions of a section that its own lines do not ask, with their widths."""
    draft = session.here().draft
    path, zone = f"part.section.{number}", drafts.zone_of(draft, number)
    asked = {f"{path}.fillet": 130}
    if not part_form.is_bored(draft, path):
        asked[f"{path}.bore"] = 130
    if zone is not None and number == min(drafts.read(draft, f"zone.{zone}.section")):
        asked[f"zone.{zone}.life_ratio"] = 130
        if drafts.read(draft, f"zone.{zone}.hardness") is not None:
            asked[f"zone.{zone}.hardness.must"] = 180
    return asked
