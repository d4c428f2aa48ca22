"""Why not: what is out and by which demand, what cannot be judged, how firm the order is."""

import streamlit as st

from ui import answer, draw, labels, table

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
    draw.table(table.rejected(found, gate))
near = table.nearest(found)
if len(near):
    st.header("Nearest misses")
    draw.table(near)
if found.apart:
    st.header("Apart: cannot be judged yet")
    draw.table(table.apart(found))
st.header("Assumed")
draw.bullets(found.assumptions)
if found.other_methods:
    st.header("Other ways of weighing")
    draw.table(table.methods(found))
if found.pairwise:
    st.header("One against another")
    st.write(
        "In how many of 100 draws the option of the line stands above the one of the column."
    )
    draw.table(table.pairwise(found))
st.header("What the weighing runs between")
draw.table(table.ranges(found))
