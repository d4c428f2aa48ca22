"""The frame of the page: its settings, what a fresh session holds, and its views."""

import streamlit as st

from ui import session

st.set_page_config(page_title="temperwright", page_icon="🔥", layout="wide")
session.begin()
st.navigation(
    [
        st.Page("views/part.py", title="Part", url_path="part", default=True),
        st.Page("views/choice.py", title="Choice", url_path="choice"),
        st.Page("views/why_not.py", title="Why not", url_path="why-not"),
        st.Page("views/cautions.py", title="Cautions", url_path="cautions"),
    ],
    position="top",
).run()
