"""From the form to its advice, with a bar that moves meanwhile."""

import contextvars
import logging

import streamlit as st

from selector import Requirement
from selector.advice.record import AdviceOut
from selector.errors import SelectorError
from ui import cached, labels, session

_log = logging.getLogger(__name__)


def compute(requirement: Requirement) -> bool:
    """Compute the advice and keep the requirement; say what went wrong instead of failing.

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

    def move(text: str, fraction: float) -> None:
        here.run(bar.progress, min(fraction, 1.0), text)

    try:
        cached.advice(requirement, move)
    except SelectorError as error:
        st.error(labels.plain(str(error)))
        return False
    except Exception:  # noqa: BLE001 - a fault of ours must not cost the visitor the form
        _log.exception("no advice on %s", requirement.part.name)
        st.error(
            "This part could not be computed: a fault of the program, written to its log. "
            "What you typed is kept, and so is the last advice."
        )
        return False
    finally:
        bar.empty()
    session.answered(requirement)
    return True


def shown() -> AdviceOut:
    """Return the advice to show; without one, say where to ask for it and stop the view."""
    requirement = session.asked()
    if requirement is None:
        st.info("There is no advice yet. Describe the part, then press “Advise”.")
        st.page_link("views/part.py", label="To the form")
        st.stop()
    with st.spinner("Computing the advice"):
        return cached.advice(requirement)
