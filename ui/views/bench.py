"""At the bench: the steps in order of work with ticks, and the card to print and take along."""

import streamlit as st

from ui import answer, cached, sheets, work
from ui.figures import in_short
from ui.labels import plain
from ui.piece import markup

requirement = answer.asked()
st.title("At the bench", anchor=False)
advice = answer.shown(requirement)
if not advice.options or requirement.safety_critical:
    st.markdown(plain(advice.headline))
    st.write("There is no card to work by: this is nothing to harden here.")
    st.stop()
named = {option.id: in_short(option) for option in advice.options}
chosen = st.selectbox("Option", named, key="bench/option", format_func=named.__getitem__)
option = next(option for option in advice.options if option.id == chosen)
st.markdown(f"**{plain(advice.part)}**")
sheets.card_to_take(cached.weighed(requirement), option)
markup(work.dangers(advice.cautions, option))
for step in option.procedure:
    with st.container(key=f"step/{step.number}"):
        st.checkbox(f"{step.number}. {plain(step.action)}", key=f"bench/{chosen}/{step.number}")
        markup(work.beneath(step))
