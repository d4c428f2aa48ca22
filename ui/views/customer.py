"""For the customer: what is proposed and why, as a letter to change, print and take along."""

import streamlit as st

from ui import answer, frame, held, offer
from ui.labels import plain
from ui.option_name import in_short, unplaced

requirement = answer.asked()
st.title("For the customer", anchor=False)
advice = answer.shown(requirement)
if requirement.safety_critical:
    offer.show(requirement, advice, None)
    st.stop()
if not advice.options:
    st.markdown(plain(advice.headline))
    st.write("Nothing comes out right, so there is nothing to offer yet.")
    frame.link("choice", "What is left to do")
    st.stop()
named = {option.id: in_short(option) for option in advice.options}
chosen = st.selectbox(
    "What is proposed", named, format_func=named.__getitem__,
    **held.lasting("customer/option", next(iter(named)), named),
)  # fmt: skip
option = next(option for option in advice.options if option.id == chosen)
# A phone shows but the beginning of what was chosen.
st.markdown(f"**{plain(unplaced(option))}**")
offer.show(requirement, advice, option)
