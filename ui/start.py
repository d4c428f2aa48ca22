"""What fills the form at once: a shipped example, or a file of the visitor's own."""

import streamlit as st

from catalog import Catalog
from catalog.example import example_names
from selector.errors import Problem, RequirementError
from selector.requirement import requirement_from
from ui import cached, form, labels, piece, session
from ui import draft as drafts
from ui.draft import Draft
from ui.field import FIELDS
from ui.upload import parsed


def show() -> None:
    """Show both, and why the last file was not taken."""
    names = example_names()
    left, right = st.columns(2)
    with left.container(border=True):
        st.selectbox(
            "Start from an example", names, format_func=labels.words, key=session.EXAMPLE
        )
        st.button("Load example", key="start/load", on_click=_example, disabled=not names)
        piece.small("It replaces the form; safety use is left for you to answer.")
    with right.container(border=True):
        st.file_uploader(
            "Or from your own requirement file",
            type=["toml", "json"],
            key=session.FILE,
            on_change=_file,
        )
        for problem in session.refused():
            st.error(f"Not taken. {form.sentence(problem)}")


def _example() -> None:
    """Put the chosen example into the form."""
    session.replace(session.example(session.held(session.EXAMPLE)))


def _file() -> None:
    """Put the uploaded file into the form."""
    file = session.held(session.FILE)
    if file is not None:
        _take_file(file.name, file.getvalue(), cached.catalog())


def _take_file(name: str, content: bytes, catalog: Catalog) -> None:
    """Put a requirement file into the form, or keep why it was not taken.

    Typed answers that break a rule are taken and named beside their fields; what the form could
    not show is refused, and the form stays as it was.
    """
    try:
        data = parsed(name, content)
    except RequirementError as error:
        session.refuse(error.problems)
        return
    problems = _beyond_the_form(data) or drafts.misfits(data, form.choices(data, catalog))
    if problems:
        session.refuse(problems)
    else:
        session.replace(data, tried=True)


def _beyond_the_form(data: Draft) -> tuple[Problem, ...]:
    """Return the faults of a file that no field of the form could mend."""
    try:
        requirement_from(data)
    except RequirementError as error:
        return tuple(
            problem
            for problem in error.problems
            if problem.got != "nothing" and drafts.kind_of(problem.field) not in FIELDS
        )
    return ()
