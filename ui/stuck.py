"""What is shown where nothing is offered: what came nearest, what else, whom to ask."""

import streamlit as st

from selector import Requirement
from selector.advice.missed import (
    NOTHING_HELPS,
    WHOM_TO_ASK,
    certified_bars,
    nearest_misses,
    rejected_lines,
)
from selector.advice.record import AdviceOut
from ui import cached, change, figures, frame, picture, session, why_not
from ui.labels import plain, unbroken, upper
from ui.piece import bullets, markup, panel
from ui.words import first_sentence

# So many reasons stand in the open.
_OPEN = 6


def show(requirement: Requirement, advice: AdviceOut) -> None:
    """Show what is left to do.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    advice : AdviceOut
        Its advice: without an option, or of a part that lives depend on.
    """
    if requirement.safety_critical:
        _passed_on(advice)
    else:
        _missed(requirement, advice)
    st.header("Look out, step by step", anchor=False)
    markup(figures.look_out(advice.cautions))
    with st.expander("What was assumed"):
        bullets(advice.assumptions)


def instead_of_torch(advice: AdviceOut) -> None:
    """Show what is advised where the torch will not do or is not needed."""
    first, rest = first_sentence(unbroken(advice.headline))
    with panel("instead"):
        st.header("Instead of the torch", anchor=False)
        st.markdown(f"**{plain(first)}** {plain(rest)}")
        if not advice.options:
            bullets(upper(change.text) for change in advice.changes)
        frame.link("choice")


def _passed_on(advice: AdviceOut) -> None:
    """Show which bar would fit, and whom to ask."""
    bars = certified_bars(advice)
    if bars:
        st.header("Bar of a fitting kind", anchor=False)
        bullets(map(upper, bars))
    st.header("Whom to ask", anchor=False)
    st.markdown(plain(WHOM_TO_ASK))
    frame.link("customer", "The letter that passes it on")


def _missed(requirement: Requirement, advice: AdviceOut) -> None:
    """Show what would let something in, what came nearest, and what stops the rest."""
    change.show(requirement, advice)
    if not advice.changes:
        st.markdown(plain(NOTHING_HELPS))
    st.header("What is asked", anchor=False)
    drawing = picture.of_draft(session.here().asked or {}, cached.catalog())
    markup("<div class='tw-panel'><div class='tw-asked'>", drawing, "</div></div>")
    if advice.coupon:
        st.header("A test piece first", anchor=False)
        bullets(advice.coupon)
    st.header("What came nearest", anchor=False)
    bullets(map(upper, nearest_misses(advice)))
    why_not.show(requirement)
    st.header("What stops the rest", anchor=False)
    reasons = [upper(line) for line in rejected_lines(advice.rejected, set(), coded=False)]
    bullets(reasons[:_OPEN])
    if len(reasons) > _OPEN:
        with st.expander("Further reasons"):
            bullets(reasons[_OPEN:])
