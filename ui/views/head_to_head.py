"""Head to head."""

import streamlit as st

st.title("Head to head", anchor=False)
