"""Steels: any name, what each is called, how it is sold, its curve and its sources."""

import streamlit as st

from ui import cached, steel_name, steel_view
from ui.labels import plain
from ui.piece import markup, panel

known = cached.catalog()
st.title("Steels", anchor=False)
text = steel_name.ask("Any name, kind or family", "steels/name")
found = {
    steel.slug: steel
    for steel in sorted(known.listed(text), key=lambda steel: steel.spoken.casefold())
}
if not found:
    steel_name.unknown(text, "steels/name")
    st.stop()
st.markdown(
    f"{len(found)} of {len(known.steels)} steels"
    + (plain(f" answer to {text}.") if text else ". Choose one, or look for it by any name.")
)
slug = st.selectbox(
    "Steel", found, key=f"steels/one/{text}", width=560,
    format_func=lambda key: f"{found[key].spoken} · {found[key].kind}",
)  # fmt: skip
steel = found[slug]
st.header(plain(steel.spoken), anchor=False)
st.markdown(plain(steel.summary))
left, right = st.columns([2, 1])
with left, panel("names"):
    st.subheader("Called and sold", anchor=False)
    markup(steel_view.names(steel))
with right, panel("composition"):
    st.subheader("Composition", anchor=False)
    markup(steel_view.composition(steel))
curve = steel_view.tempered(steel, known)
if curve:
    with panel("curve"):
        st.subheader("Hardness by temper", anchor=False)
        markup(curve)
with panel("sources"):
    st.subheader("Where the figures come from", anchor=False)
    markup(steel_view.sources(steel, known))
