"""The frame of the page: its settings, the part at hand, the way between its views."""

import streamlit as st

from ui import cached, frame, session
from ui.inward import stay_inside

stay_inside()
st.set_page_config(page_title="temperwright", page_icon=frame.ICON, layout="wide")
session.begin()
view = st.navigation(list(frame.pages().values()), position="hidden")
frame.head(view)
view.run()
# Once the first view stands there, not before: both would wait for each other.
cached.warm()
cached.tidy()
