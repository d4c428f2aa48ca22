"""The letter to the customer: composed from the advice, changed as a text, taken along."""

from functools import partial
from zlib import crc32

import streamlit as st

from selector import Requirement
from selector.advice.record import AdviceOut
from selector.handover.drawing.part_drawing import Drawing
from selector.handover.letter.editable import changed, strange_figures, text_of
from selector.handover.letter.letter import composed
from selector.handover.letter.made import Sender, made
from selector.handover.letter.picture import picture
from selector.handover.letter.record import Letter, Tone
from selector.record import OptionOut
from ui import cached, frame, letterhead, session
from ui.labels import plain

_TONES: dict[Tone, str] = {"full": "In full", "brief": "In brief"}
_MIME = {
    ".pdf": "application/pdf",
    ".docx": "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
    ".html": "text/html",
}


def show(requirement: Requirement, advice: AdviceOut, record: OptionOut | None) -> None:
    """Show the letter of an option, to be changed and taken along.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    advice : AdviceOut
        Its advice.
    record : OptionOut, optional
        What is proposed; None of a part that is passed on.
    """
    tone = st.radio(
        "Tone", _TONES, horizontal=True, key="letter/tone", format_func=_TONES.__getitem__,
        persist_state="session",
    )  # fmt: skip
    letter = composed(requirement, advice, record, tone)
    fresh = composed(requirement, advice, record)
    written = _as_changed(plainly(letter), session.here().id)
    mine = changed(letter, written)
    strange = strange_figures(mine, fresh)
    if strange:
        st.markdown("**Figures that the advice does not hold; they will be marked:**")
        st.markdown("\n".join(f"- {plain(text)}" for text in strange))
    drawing = None if record is None else _picture(requirement, record)
    sender, wrong = letterhead.sender(session.here().shop)
    if wrong or sender.identity is None:
        with st.container(horizontal=True, vertical_alignment="center"):
            st.markdown(plain(wrong or "It goes out without a letterhead."), width="content")
            frame.link("workshop", "The letterhead, in your workshop")
    with st.container(horizontal=True):
        for suffix, mime in _MIME.items():
            st.download_button(
                f"Letter as {suffix[1:].upper()}",
                partial(content, mine, sender, drawing, fresh, suffix),
                f"letter{suffix}", mime, key=f"letter/{suffix}", on_click="ignore",
            )  # fmt: skip


def _as_changed(text: str, part: str) -> str:
    """Ask for a letter as it is to go out; what was changed lasts as long as the advice."""
    # A letter of other figures is another one: its changes would speak of the part before.
    key = f"letter/{part}/{crc32(text.encode())}"
    written = st.text_area(
        "The letter, to be changed", text, height=560, key=key, persist_state="session"
    )
    st.caption(
        "A head in square brackets begins a section; take it out with its text, or add one. "
        "The table of other ways is set under its head."
    )
    return written


def plainly(letter: Letter) -> str:
    """Return a letter as a text to change, without what is said to the command line."""
    lines = text_of(letter).splitlines()
    return "\n".join(line for line in lines if not line.startswith("#")).strip()


def _picture(requirement: Requirement, record: OptionOut) -> Drawing:
    """Return the picture of the option that is proposed."""
    known = cached.weighed(requirement)
    return picture(known.job, next(o for o in known.options if o.id == record.id))


def content(
    letter: Letter, sender: Sender, drawing: Drawing | None, fresh: Letter, suffix: str
) -> bytes:
    """Return a letter as the content of a file.

    Parameters
    ----------
    letter : Letter
        As it was changed.
    sender : Sender
        Who writes.
    drawing : Drawing, optional
        The part.
    fresh : Letter
        As the advice has it; figures beyond it are marked.
    suffix : str
        ".pdf", ".docx" or ".html".

    Returns
    -------
    bytes
        The file.
    """
    return made(letter, sender, drawing, fresh, (suffix, "a4")).content
