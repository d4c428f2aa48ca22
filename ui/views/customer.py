"""For the customer."""

import streamlit as st

st.title("For the customer", anchor=False)
