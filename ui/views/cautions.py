"""Cautions, each with the step of the work it belongs to, and the plan for a test piece."""

import streamlit as st

from ui import answer, labels, piece, table

advice = answer.shown()
st.title("Cautions")
if advice.coupon:
    st.header("A test piece first")
    st.markdown(
        "\n".join(f"{n}. {labels.plain(text)}" for n, text in enumerate(advice.coupon, start=1))
    )
worst = table.first_screen(advice)
if worst:
    st.header("The worst first")
    piece.bullets(worst)
for step, cautions in table.by_step(advice).items():
    st.header(labels.words(step))
    piece.bullets(cautions)
