"""Why not: what is out and by which demand, what cannot be judged, how firm the order is."""

import streamlit as st

from ui import answer, labels, piece, table

advice = answer.shown()
st.title("Why not")
st.header("Out, by the demand that decided")
counts = table.gate_counts(advice.rejected)
if counts:
    gate = st.selectbox(
        "Demand",
        counts,
        key="why-not/gate",
        format_func=lambda name: f"{labels.words(name)} ({counts[name]} routes)",
    )
    piece.table(table.rejected(advice, gate))
near = table.nearest(advice)
if len(near):
    st.header("Nearest misses")
    piece.table(near)
if advice.apart:
    st.header("Apart: cannot be judged yet")
    piece.table(table.apart(advice))
st.header("Assumed")
piece.bullets(advice.assumptions)
if advice.other_methods:
    st.header("How firm is this?")
    piece.table(table.methods(advice))
if advice.pairwise:
    st.header("One against another")
    st.write("How often in 100 the option of the line stands above the one of the column.")
    piece.table(table.pairwise(advice))
st.header("What the weighing runs between")
piece.table(table.ranges(advice))
