"""At the bench: the steps in order of work, each with its figures, checks and cautions."""

import streamlit as st

from ui import answer, work
from ui.figures import in_short
from ui.labels import plain
from ui.piece import markup

requirement = answer.asked()
st.title("At the bench", anchor=False)
advice = answer.shown(requirement)
if not advice.options:
    st.write("Nothing comes out right, so there is nothing to work by yet.")
    st.stop()
named = {option.id: in_short(option) for option in advice.options}
chosen = st.selectbox("Option", named, key="bench/option", format_func=named.__getitem__)
option = next(option for option in advice.options if option.id == chosen)
st.markdown(f"**{plain(advice.part)}**")
markup(work.dangers(advice.cautions, option))
for step in option.procedure:
    with st.container(key=f"step/{step.number}"):
        st.checkbox(f"{step.number}. {plain(step.action)}", key=f"bench/{chosen}/{step.number}")
        markup(work.beneath(step))
