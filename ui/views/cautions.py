"""Cautions, each with the step of the work it belongs to, and the plan for a test piece."""

import streamlit as st

from ui import answer, draw, labels, table

found = answer.shown()
st.title("Cautions")
if found.coupon:
    st.header("A test piece first")
    st.markdown(
        "\n".join(f"{n}. {labels.plain(text)}" for n, text in enumerate(found.coupon, start=1))
    )
for step, cautions in table.by_step(found).items():
    st.header(labels.words(step))
    draw.bullets(cautions)
