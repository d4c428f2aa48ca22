"""Steels: any name, what each is called, how it is sold, its curve and its sources."""

import streamlit as st

from ui import cached, steel_view
from ui.labels import plain
from ui.piece import markup

known = cached.catalog()
st.title("Steels", anchor=False)
text = st.text_input(
    "Any name, kind or family", key="steels/name", width=360, max_chars=80
).strip()
found = steel_view.matching(known, text)
st.markdown(
    f"{len(found)} of {len(known.steels)} steels"
    + (plain(f" answer to {text}.") if text else ". Choose one, or look for it by any name.")
)
if not found:
    st.stop()
exact = known.find(text) if text else ()
slugs = [steel.slug for steel in found]
start = slugs.index(exact[0].slug) if exact else 0
slug = st.selectbox(
    "Steel", slugs, index=start, key=f"steels/one/{text}",
    format_func=lambda key: f"{known.steels[key].spoken} · {known.steels[key].kind}",
)  # fmt: skip
steel = known.steels[slug]
st.header(plain(steel.spoken), anchor=False)
st.markdown(plain(steel.summary))
markup(steel_view.names(steel))
st.subheader("Composition", anchor=False)
markup(steel_view.composition(steel))
curve = steel_view.tempered(steel, known)
if curve:
    st.subheader("Hardness by temper", anchor=False)
    markup(curve)
st.subheader("Where the figures come from", anchor=False)
markup(steel_view.sources(steel, known))
