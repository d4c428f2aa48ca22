"""Your workshop: asked once, kept by name, with its rack."""

import streamlit as st

from catalog.text import RULE, is_steady
from ui import cached, fields, form, frame, letterhead, part_form, session, store
from ui.draft import checked
from ui.labels import plain
from ui.piece import small

visit = session.here()
_, problems = checked(visit.draft, cached.catalog())
form.show_faults(p for p in problems if p.field.startswith("workshop") and p.got != "nothing")
st.title("Your workshop", anchor=False)
if visit.shop is None:
    st.write("Say once what there is, and keep it under a name: each new part starts in it.")
    with st.container(horizontal=True, vertical_alignment="bottom"):
        name = st.text_input("Name", key="workshop/name", width=320, max_chars=80)
        asked = st.button("Keep this workshop", type="primary", key="workshop/keep")
    if asked and not (name.strip() and is_steady(name)):
        st.markdown(f":red[Give it a name of {RULE}.]")
    elif asked:
        session.name_workshop(name.strip())
        st.rerun()
else:
    with st.container(horizontal=True, vertical_alignment="center"):
        st.markdown(f"**{plain(visit.shop)}** is kept at every change.")
        if st.button("Keep as another", key="workshop/copy"):
            session.use_workshop(None)
            st.rerun()
        if st.button("Forget this one", key="workshop/forget"):
            store.forget_workshop(visit.shop)
            session.use_workshop(None)
            st.rerun()
st.header("What there is to heat with", anchor=False)
part_form.table("workshop.heat")
st.header("What there is to quench in", anchor=False)
part_form.table("workshop.bath")
st.header("What there is to temper with, besides", anchor=False)
part_form.table("workshop.temper")
st.header("How heat and hardness are judged", anchor=False)
part_form.lines(fields.JUDGED)
with st.expander("How practised the hand is"):
    form.line(*fields.SKILL)
st.header("Your rack", anchor=False)
part_form.table("workshop.stock")
st.header("Your prices", anchor=False)
prices = cached.catalog().prices
whose = "invented for demonstration" if prices.invented else "those of your price list"
small(f"In {plain(prices.currency)}. What you do not give is {whose}.")
form.line("workshop.labour_per_h")
part_form.table("workshop.price")
st.header("Your letterhead", anchor=False)
small("It stands over the letters to your customers. Blank, they go out without one.")
letterhead.ask()
frame.link("part", "Back to the part")
