"""The first and the answers of other kinds side by side, each with where it changes places."""

from collections.abc import Callable, Iterable
from functools import partial

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from selector import Requirement
from selector.advice.record import AdviceOut, AlternativeOut
from selector.errors import SelectorError
from ui import cached, figures, frame, held, picture
from ui.labels import plain
from ui.piece import bullets, markup, panel
from ui.turn import turned

RIVAL = "versus/second"


def show(requirement: Requirement, advice: AdviceOut) -> Callable[[], None]:
    """Show the cards, the first in the middle.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    advice : AdviceOut
        Its advice.

    Returns
    -------
    callable
        Fills in where each changes places with the first, which takes its time: for the end.
    """
    st.header("Ways that differ in kind", anchor=False)
    ways: list[AlternativeOut | None] = [*advice.alternatives]
    ways.insert(1 if len(ways) > 1 else 0, None)
    places: list[tuple[DeltaGenerator, AlternativeOut]] = []
    for column, way in zip(st.columns(max(len(ways), 2)), ways, strict=False):
        kind = "first" if way is None else f"{way.place}"
        with column, panel(f"way/{kind}"):
            if way is None:
                _first(requirement, advice)
            else:
                places.append((_other(requirement, advice, way), way))
    bullets(advice.barred)
    return partial(_fill, requirement, advice, places)


def _fill(
    requirement: Requirement,
    advice: AdviceOut,
    places: Iterable[tuple[DeltaGenerator, AlternativeOut]],
) -> None:
    """Say on each card where it changes places with the first."""
    for place, way in places:
        for text in _turns(requirement, advice, way):
            place.markdown(f"**{plain(text)}**")


def _first(requirement: Requirement, advice: AdviceOut) -> None:
    """Show the first, with what is handed over of it."""
    known, first = cached.weighed(requirement), advice.options[0]
    drawing = picture.of_option(known.job, known.options[0], small=True)
    markup(figures.card_of_first(first, advice.why_first, drawing))
    with st.container(horizontal=True):
        if st.button("Bench card", key="way/bench", type="primary"):
            frame.go("bench")
        if st.button("Letter", key="way/letter"):
            frame.go("customer")


def _other(requirement: Requirement, advice: AdviceOut, way: AlternativeOut) -> DeltaGenerator:
    """Show an answer of another kind; return the place for what sets it against the first."""
    known = cached.weighed(requirement)
    option = next((option for option in advice.options if option.id == way.id), None)
    drawing = picture.of_option(known.job, known.options[way.place - 1], small=True)
    markup(figures.card_of(way, option, drawing))
    place = st.container()
    if st.button(f"Set {way.bar} against the first", key=f"way/{way.place}"):
        held.fill_in(RIVAL, way.id)
        frame.go("head_to_head")
    return place


def _turns(requirement: Requirement, advice: AdviceOut, way: AlternativeOut) -> list[str]:
    """Return the nearest place where one is cheaper than the other, and where it leads."""
    try:
        against = cached.versus(requirement, advice.options[0].id, way.id)
    except SelectorError:
        return []
    nearest = {swap.by: swap for swap in reversed(against.swaps) if swap.at is not None}
    places = [nearest[by] for by in ("cost", "score") if by in nearest]
    return turned(places, "the first", "it", way.currency)
