"""At the bench."""

import streamlit as st

st.title("At the bench", anchor=False)
