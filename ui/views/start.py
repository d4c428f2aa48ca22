"""Start: the three questions as doors, a blank part, an example, a file."""

import streamlit as st

from catalog.example import example_names
from ui import cached, frame, going_on, opening, picture, session
from ui.labels import plain
from ui.piece import markup, panel, small

DOORS = {
    "choice": (
        "Which steel and treatment?",
        "Ranked, with cost, chance and what can go wrong.",
        "Choose a steel for my part",
    ),
    "torch": (
        "Will the torch do?",
        "Where it gets hard, how hot by eye, the one change.",
        "Try the torch on my part",
    ),
    "customer": (
        "What do I tell the customer?",
        "A letter that says what, why and what it costs.",
        "Write a letter on my part",
    ),
}


def _doors() -> None:
    """Show the three questions."""
    for column, (aim, (title, text, label)) in zip(st.columns(3), DOORS.items(), strict=True):
        with column, panel(f"door/{aim}"):
            st.header(title, anchor=False)
            st.write(text)
            if st.button(label, key=f"door/{aim}", type="primary"):
                opening.blank_part(aim)
                frame.go("part")


def _examples() -> None:
    """Show the examples, each with its drawing."""
    st.header("Try an example", anchor=False)
    small("Invented parts in an invented workshop; a copy of your own to play with.")
    for column, name in zip(st.columns(len(names := example_names())), names, strict=True):
        with column, panel(f"example/{name}"):
            draft = opening.example(name)
            st.subheader(plain(draft["part"]["name"]), anchor=False)
            drawing = picture.of_draft(draft, cached.catalog(), plain=True)
            markup("<div class='tw-example'>", drawing, "</div>")
            if st.button("Take this one", key=f"example/{name}"):
                session.start(draft)
                frame.go("part")


def _file() -> None:
    """Take a file, and say all that is wrong with one that is not taken."""
    st.header("Open a file", anchor=False)
    uploaded = st.file_uploader(
        "A requirement file, TOML or JSON", type=["toml", "json"], key="start/file"
    )
    if uploaded is not None and opening.take_file(uploaded.name, uploaded.getvalue()):
        frame.go("part")
    for text in opening.why_refused():
        st.error(plain(text))


st.title("What steel, and how do you harden it?", anchor=False)
st.markdown(
    "Describe a part and your workshop as it is. You get a steel, a way to treat it by what "
    "you have, what it costs and how surely it comes out right."
)
_doors()
with st.container(horizontal=True, vertical_alignment="center"):
    if st.button("My part, from a blank sheet", key="start/blank"):
        opening.blank_part("choice")
        frame.go("part")
    frame.link("workshop", "Your workshop first")
going_on.show()
_examples()
_file()
