"""How firm is this?."""

import streamlit as st

st.title("How firm is this?", anchor=False)
