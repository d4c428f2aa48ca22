"""Head to head: any two options side by side, and where they change places."""

import streamlit as st

from selector.errors import SelectorError
from ui import answer, cached, duel
from ui.figures import in_short
from ui.labels import plain
from ui.piece import bullets, markup

requirement = answer.asked()
st.title("Head to head", anchor=False)
advice = answer.shown(requirement)
if len(advice.options) < 2:
    st.write("There are no two options to set against each other.")
    st.stop()
ids = [option.id for option in advice.options]
named = {option.id: in_short(option) for option in advice.options}
rival = advice.alternatives[0].id if advice.alternatives else ids[1]
left, right = st.columns(2)
with left:
    first = st.selectbox("One", ids, key="versus/first", format_func=named.__getitem__)
with right:
    second = st.selectbox(
        "The other", ids, index=ids.index(rival), key="versus/second",
        format_func=named.__getitem__,
    )  # fmt: skip
if first == second:
    st.write("Choose two that differ.")
    st.stop()
try:
    found = cached.versus(requirement, first, second)
except SelectorError as error:
    st.error(plain(str(error)))
    st.stop()
st.markdown(f"**{plain(found.headline)}**")
markup(duel.sides(found))
st.header("Where they change places", anchor=False)
bullets(swap.text for swap in found.swaps if swap.at is not None)
never = [swap.axis for swap in found.swaps if swap.at is None and swap.by == "cost"]
if never:
    st.caption(plain("By cost they never change places along " + ", ".join(never) + "."))
st.header("Cost of a good part by how many", anchor=False)
markup(duel.by_quantity(found))
