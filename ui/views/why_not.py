"""Why not: what is out and by which demand, what cannot be judged, how firm the order is."""

import streamlit as st

from ui import answer, labels, table

found = answer.shown()
st.title("Why not")
st.header("Out, by the demand that decided")
counts = table.gate_counts(found.rejected)
if counts:
    gate = st.selectbox(
        "Demand",
        counts,
        key="why-not/gate",
        format_func=lambda name: f"{labels.words(name)} ({counts[name]} ways)",
    )
    st.table(table.rejected(found, gate), border="horizontal", hide_index=True)
near = table.nearest(found)
if len(near):
    st.header("Nearest misses")
    st.table(near, border="horizontal", hide_index=True)
if found.apart:
    st.header("Apart: cannot be judged yet")
    st.table(table.apart(found), border="horizontal", hide_index=True)
st.header("Assumed")
st.markdown("\n".join(f"- {labels.plain(text)}" for text in found.assumptions))
if found.other_methods:
    st.header("Other ways of weighing")
    st.table(table.methods(found), border="horizontal", hide_index=True)
if found.pairwise:
    st.header("One against another")
    st.write(
        "In how many of 100 draws the option of the line stands above the one of the column."
    )
    st.table(table.pairwise(found), border="horizontal", hide_index=True)
st.header("What the weighing runs between")
st.table(table.ranges(found), border="horizontal", hide_index=True)
