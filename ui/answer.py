"""From the form to its answers, with a bar that moves meanwhile; an old answer says so."""

import contextvars
import logging
from time import monotonic

import streamlit as st

from selector import Requirement
from selector.advice.record import AdviceOut
from selector.errors import SelectorError
from ui import cached, frame, labels, session
from ui.draft import checked
from ui.meanwhile import answered_fully

# The bar moves no oftener. [s]
_STEP_S = 0.15
_log = logging.getLogger(__name__)
_FAULT = (
    "This part could not be computed: a fault of the program, written to its log. "
    "What you typed is kept, and so is the last advice."
)


def compute(requirement: Requirement) -> bool:
    """Compute the advice; say what went wrong instead of failing.

    Parameters
    ----------
    requirement : Requirement
        What is asked.

    Returns
    -------
    bool
        Whether there is advice to show.
    """
    bar = st.progress(0.0, "Reading the requirement")
    # A cached function replays what is shown inside it; the bar belongs outside, and so moves
    # in the context of here.
    here = contextvars.copy_context()
    moved = 0.0

    def move(text: str, fraction: float) -> None:
        # Hundreds of treatments are weighed; to send and show a step for each took longer than
        # all else on the page.
        nonlocal moved
        if monotonic() - moved > _STEP_S:
            here.run(bar.progress, min(fraction, 1.0), text)
            moved = monotonic()

    if cached.warm().is_alive():
        move("Getting ready: the first time on a machine takes about 20 seconds", 0.02)
        cached.warm().join()
    try:
        cached.advice(requirement, move)
    except SelectorError as error:
        st.error(labels.plain(str(error)))
        return False
    except Exception:  # noqa: BLE001 - a fault of ours must not cost the visitor the form
        _log.exception("no advice on %s", requirement.part.name)
        st.error(_FAULT)
        return False
    finally:
        bar.empty()
    return True


def asked() -> Requirement:
    """Return what the answers shown are of; without any, lead to the form and stop."""
    visit = session.here()
    requirement = None if visit.asked is None else checked(visit.asked, cached.catalog())[0]
    if requirement is None:
        st.title("No answer yet")
        st.write("Describe the part, then press Advise.")
        frame.link("part", "To the part")
        st.stop()
    _mark_stale()
    return requirement


def _mark_stale() -> None:
    """Say that the part was changed since, with the button that asks again."""
    if not session.is_stale():
        return
    with st.container(border=True, horizontal=True, vertical_alignment="center", key="stale"):
        st.markdown(
            "**The part was changed since.** What stands here is for the part as it was.",
            width="stretch",
        )
        st.button("Advise again", key="again", on_click=advise_again)


def advise_again() -> None:
    """Have the answers shown for the part as it is now; its faults show on the form."""
    draft = session.here().draft
    requirement, _ = answered_fully(draft, cached.catalog())
    session.mark(tried=True, **({} if requirement is None else {"asked": draft}))


def shown(requirement: Requirement) -> AdviceOut:
    """Return the advice to show; where it cannot be computed, say so and stop the view."""
    if not compute(requirement):
        st.stop()
    return cached.advice(requirement)


def offered(requirement: Requirement, otherwise: str) -> AdviceOut:
    """Return advice that offers something; else say what it says, and stop the view.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    otherwise : str
        What this view has not, where nothing is offered or the part is passed on.

    Returns
    -------
    AdviceOut
        With an option at least.
    """
    advice = shown(requirement)
    if requirement.safety_critical or not advice.options:
        st.markdown(labels.plain(advice.headline))
        st.write(otherwise)
        frame.link("choice", "What is left to do")
        st.stop()
    return advice
