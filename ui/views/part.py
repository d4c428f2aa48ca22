"""The form: the part, its use, the workshop; an example or a file to start from."""

import json

import streamlit as st

from ui import answer, cached, form, piece, session, start
from ui.draft import beyond, checked, ready
from ui.field import BLOCKS

st.title("Part")
st.write(
    "Describe the part and the workshop as it is. Write sizes with their unit, for instance "
    "“1/2 in”, “90 lb ft”, “50 HRC”; a bare number is mm, N, °C or HRC. "
    "Questions marked * need an answer, the others may stay blank."
)
start.show()
draft = session.draft()
known = cached.catalog()
requirement, problems = checked(draft, known) if session.tried() else (None, ())
wrong = form.messages(problems)
offered = form.choices(draft, known)
for block in BLOCKS:
    form.show(block, draft, offered, wrong)
if extra := beyond(draft):
    piece.small("Also taken from the file: " + ", ".join(extra))
for problem in problems:
    st.error(form.sentence(problem))
piece.download(
    "Keep this form as a file", json.dumps(ready(draft), indent=2), "requirement.json"
)
with st.bottom, st.container(horizontal=True, vertical_alignment="center"):
    go = st.button("Advise", type="primary", key="part/advise", on_click=session.attempt)
    st.markdown(form.summary(problems))
if go and requirement is not None:
    with st.bottom:
        done = answer.compute(requirement)
    if done:
        st.switch_page("views/choice.py")
