"""The smallest changes after which more comes right, as buttons that make them."""

import streamlit as st

from selector import Requirement
from selector.advice.change import made
from selector.advice.record import AdviceOut, ChangeOut
from ui import answer, cached, session
from ui.draft import Draft, put
from ui.labels import plain
from ui.written import edits


def show(requirement: Requirement, advice: AdviceOut) -> None:
    """Show what to change, each with what then comes first.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    advice : AdviceOut
        Its advice.
    """
    if not advice.changes:
        return
    st.header("The smallest changes", anchor=False)
    for number, change in enumerate(advice.changes):
        name, _, then = change.text.partition(": ")
        with st.container(border=True, horizontal=True, vertical_alignment="center"):
            st.markdown(f"**{plain(name)}.** {plain(then)}", width="stretch")
            st.button(
                f"{name}: do it", key=f"change/{number}",
                on_click=_make, args=(requirement, change),
            )  # fmt: skip


def _make(requirement: Requirement, change: ChangeOut) -> None:
    """Make a change in the part at hand, and ask again."""
    answers = edits(requirement, made(cached.weighed(requirement), change))

    def alter(draft: Draft) -> None:
        for path, value in answers:
            put(draft, path, value)

    session.change(alter)
    answer.advise_again()
