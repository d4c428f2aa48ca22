"""For the customer: what is proposed and why, in a text of his own to change and take along."""

import streamlit as st

from ui import answer, offer

requirement = answer.asked()
st.title("For the customer", anchor=False)
advice = answer.shown(requirement)
if not advice.options:
    st.write("Nothing comes out right, so there is nothing to offer yet.")
    st.stop()
offer.show(advice)
