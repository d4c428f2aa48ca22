"""Head to head: any two options side by side, and where they change places."""

import streamlit as st

from selector.errors import SelectorError
from ui import answer, cached, duel, held
from ui.labels import plain
from ui.option_name import in_short
from ui.piece import bullets, markup, small
from ui.turn import turned, unturned
from ui.ways import RIVAL

requirement = answer.asked()
st.title("Head to head", anchor=False)
advice = answer.offered(requirement, "There are no two options to set against each other.")
if len(advice.options) < 2:
    st.write("There are no two options to set against each other.")
    st.stop()
ids = [option.id for option in advice.options]
named = {option.id: in_short(option) for option in advice.options}
rival = advice.alternatives[0].id if advice.alternatives else ids[1]
left, right = st.columns(2)
with left:
    kept = held.lasting("versus/first", ids[0], ids)
    first = st.selectbox("One", ids, format_func=named.__getitem__, **kept)
with right:
    kept = held.lasting(RIVAL, rival, ids)
    second = st.selectbox("The other", ids, format_func=named.__getitem__, **kept)
if first == second:
    st.write("Choose two that differ.")
    st.stop()
try:
    found = cached.versus(requirement, first, second)
except SelectorError as error:
    st.error(plain(str(error)))
    st.stop()
st.markdown(f"**{plain(found.headline)}**")
markup("<div class='tw-panel'>", duel.sides(found), "</div>")
st.header("Where they change places", anchor=False)
sides = (found.first.spoken, found.second.spoken)
called = sides if sides[0] != sides[1] else ("the one", "the other")
bullets(turned(found.swaps, *called, found.currency))
if never := unturned(found.swaps):
    small(never)
st.header("Cost of a good part by how many", anchor=False)
markup("<div class='tw-panel'>", duel.by_quantity(found), "</div>")
