"""The letter to the customer: composed from the advice, changed as a text, taken along."""

from functools import partial
from zlib import crc32

import streamlit as st

from selector import Requirement
from selector.advice.record import AdviceOut
from selector.handover.drawing.part_drawing import Drawing
from selector.handover.letter.editable import changed, strange_figures, text_of
from selector.handover.letter.letter import composed
from selector.handover.letter.made import Sender, letter_data, made
from selector.handover.letter.picture import picture
from selector.handover.letter.record import Letter, Tone
from selector.handover.sheet import pages
from selector.record import OptionOut
from ui import cached, frame, held, letterhead, session
from ui.labels import plain

# A page of A4 is then 990 dots wide: sharp where it is shown 600 wide on a dense screen.
_PPI = 120.0
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
        "Tone", _TONES, horizontal=True, format_func=_TONES.__getitem__,
        **held.lasting("letter/tone", "full", _TONES),
    )  # fmt: skip
    letter = composed(requirement, advice, record, tone)
    fresh = composed(requirement, advice, record)
    left, right = st.columns(2, gap="large")
    with left:
        mine = changed(letter, _as_changed(plainly(letter)))
        strange = strange_figures(mine, fresh)
        if strange:
            st.markdown("**Figures that the advice does not hold; they will be marked:**")
            st.markdown("\n".join(f"- {plain(text)}" for text in strange))
    drawing = None if record is None else _picture(requirement, record)
    sender, wrong = letterhead.sender(session.here().shop)
    with right, st.container(key="as-printed"):
        st.header("As it prints", anchor=False)
        printed = as_printed(mine, sender, drawing, fresh)
        for number, page in enumerate(printed, start=1):
            alt = f"The letter on paper, page {number} of {len(printed)}, as it is worded here"
            st.image(page, width="stretch", alt=alt)
        # A sheet of paper on a phone is too small to read: there it is shown as a page.
        with st.container(key="as-read"):
            page_ = content(mine, sender, drawing, fresh, ".html").decode()
            st.iframe(page_, alt="The letter as a page, as it is worded here")
    with left:
        if wrong or sender.identity is None:
            st.markdown(plain(wrong or "It goes out without a letterhead."))
            frame.link("workshop", "The letterhead, in your workshop")
        _to_take(mine, sender, drawing, fresh)


def _to_take(letter: Letter, sender: Sender, drawing: Drawing | None, fresh: Letter) -> None:
    """Offer the letter as files, each made only when it is asked for."""
    with st.container(horizontal=True):
        for suffix, mime in _MIME.items():
            st.download_button(
                f"Letter as {suffix[1:].upper()}",
                partial(content, letter, sender, drawing, fresh, suffix),
                f"letter{suffix}", mime, key=f"letter/{suffix}", on_click="ignore",
            )  # fmt: skip


def _as_changed(text: str) -> str:
    """Ask for a letter as it is to go out; what was changed lasts as long as the advice."""
    # A letter of other figures is another one: its changes would speak of the part before.
    kept = held.lasting(f"letter/{crc32(text.encode())}", text)
    written = str(st.text_area("The letter, to be changed", height=640, **kept))
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


def as_printed(
    letter: Letter, sender: Sender, drawing: Drawing | None, fresh: Letter
) -> tuple[bytes, ...]:
    """Return the pages of a letter as they are printed.

    Parameters
    ----------
    letter : Letter
        As it was changed.
    sender : Sender
        Who writes.
    drawing : Drawing, optional
        The part.
    fresh : Letter
        As the advice has it.

    Returns
    -------
    tuple of bytes
        PNG, a page each.
    """
    return pages("letter", letter_data(letter, sender, drawing, fresh), _PPI)


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
