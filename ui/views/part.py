"""The form: the part, its use, the workshop; an example or a file to start from."""

import json

import streamlit as st

from catalog.example import example_names
from ui import answer, cached, form, labels, session
from ui.draft import beyond, checked, ready
from ui.field import BLOCKS


def _take_example() -> None:
    """Put the chosen example into the form."""
    session.replace(session.example(session.held(session.EXAMPLE)))


def _take_file() -> None:
    """Put the uploaded file into the form."""
    file = session.held(session.FILE)
    if file is not None:
        form.take_file(file.name, file.getvalue(), cached.catalog())


def _start() -> None:
    """Draw the ways to fill the form at once."""
    left, right = st.columns(2)
    with left.container(border=True):
        st.selectbox(
            "Start from an example",
            example_names(),
            format_func=labels.words,
            key=session.EXAMPLE,
            placeholder="none is shipped",
        )
        st.button(
            "Load example",
            key="start/load",
            on_click=_take_example,
            disabled=not example_names(),
        )
        st.markdown(labels.small("It replaces the form; safety use is left for you to answer."))
    with right.container(border=True):
        st.file_uploader(
            "Or from your own requirement file",
            type=["toml", "json"],
            key=session.FILE,
            on_change=_take_file,
        )
        for problem in session.refused():
            st.error(f"Not taken. {form.sentence(problem)}")


st.title("Part")
st.write(
    "Describe the part and the workshop as it is. Write sizes with their unit, for instance "
    "“1/2 in”, “90 lb ft”, “50 HRC”; a bare number is mm, N, °C or HRC. "
    "Questions marked * need an answer, the others may stay blank."
)
_start()
draft = session.draft()
known = cached.catalog()
requirement, problems = checked(draft, known) if session.tried() else (None, ())
told = form.messages(problems)
offered = form.choices(draft, known)
for block in BLOCKS:
    form.show(block, draft, offered, told)
if extra := beyond(draft):
    st.markdown(labels.small("Also taken from the file: " + ", ".join(extra)))
for problem in problems:
    st.error(form.sentence(problem))
kept = json.dumps(ready(draft), indent=2)
st.download_button("Keep this form as a file", kept, "requirement.json", key="part/keep")
with st.bottom, st.container(horizontal=True, vertical_alignment="center"):
    go = st.button("Advise", type="primary", key="part/advise", on_click=session.attempt)
    st.markdown(form.summary(problems))
if go and requirement is not None:
    with st.bottom:
        done = answer.compute(requirement)
    if done:
        st.switch_page("views/choice.py")
