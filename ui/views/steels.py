"""Steels."""

import streamlit as st

st.title("Steels", anchor=False)
