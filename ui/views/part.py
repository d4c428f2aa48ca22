"""The part: the questions that decide, beside the drawing and what they come to."""

import json
from functools import partial

import streamlit as st

from ui import (
    able,
    answer,
    cached,
    fields,
    form,
    frame,
    needed,
    part_form,
    picture,
    piece,
    session,
    shop,
)  # fmt: skip
from ui.meanwhile import answered_fully

visit = session.here()
draft = visit.draft
requirement, problems = answered_fully(draft, cached.catalog())
cached.drop_ahead(requirement)
# What is typed is judged at once; what is still blank only after advice was asked for.
told = [p for p in problems if visit.tried or p.got != "nothing"]
form.show_faults(told)
with st.bottom, st.container(horizontal=True, vertical_alignment="center", key="ask"):
    go = st.button(
        "Advise", type="primary", key="part/advise",
        on_click=session.mark, kwargs={"tried": True},
    )  # fmt: skip
    st.markdown(form.summary(told))
if go and requirement is not None:
    # Before the form is drawn: the browser still shows it, and leaves it for the answer.
    # Counted as asked already: who goes to another view meanwhile finds this answer there.
    before = visit.asked
    session.mark(asked=draft)
    with st.bottom:
        done = answer.compute(requirement)
    if done:
        frame.go(visit.aim)
    session.mark(asked=before)
# Before the form is drawn too: whoever presses Advise at once waits that much less.
if requirement is not None and session.is_stale():
    cached.begin_ahead(requirement)
with st.container(horizontal=True, vertical_alignment="bottom", key="part/title"):
    st.title("Your part", width="stretch", anchor=False)
    st.button("Undo", key="undo", on_click=session.undo, disabled=not visit.before)
    piece.download("Keep as a file", partial(json.dumps, draft, indent=2), "requirement.json")
st.write(
    "Leave blank what you do not know. A bare number is mm, N, °C or HRC; others are written "
    "with their unit: 1/2 in, 66 lb ft, 480 HB."
)
# Where narrow, the drawing proper comes after the form: this one stays in sight above it. Its
# place is there before it is, or all that follows would be made anew under the hand.
with st.container(key="small-drawing"):
    piece.markup(picture.of_draft(draft, cached.catalog(), plain=True))
left, right = st.columns([11, 9], gap="large")
with left:
    part_form.head(1, "What is it?")
    part_form.what_it_is()
    part_form.head(2, "Its sections, from the working end, and what each suffers")
    part_form.sections()
    part_form.head(3, "What does it carry, and what must it keep to?")
    part_form.lines(fields.LOADS)
    part_form.head(4, "Which workshop?")
    shop.choose()
    part_form.head(5, "What matters most?")
    part_form.priorities()
    part_form.head(6, "More, where it matters")
    part_form.seldom()
with right, st.container(key="beside"):
    needed.show(draft, picture.of_draft(draft, cached.catalog()))
    able.show(draft)
