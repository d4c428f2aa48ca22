"""Your workshop: asked once, kept by name, with its rack."""

import streamlit as st

from catalog.text import RULE, is_steady
from ui import cached, form, frame, letterhead, part_form, session, store
from ui.draft import checked, ready
from ui.form import ask
from ui.labels import plain
from ui.piece import small

visit = session.here()
choices = part_form.bench_choices(cached.catalog())
_, problems = checked(ready(visit.draft), cached.catalog())
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
part_form.table(
    "workshop.heat",
    {"source": 330, "ceiling": 120, "gas_flow": 120, "tip": 130, "chamber": 140},
    choices,
    lambda row: part_form.idle_of_heat(row, cached.catalog()),
)
st.header("What there is to quench in", anchor=False)
part_form.table(
    "workshop.bath",
    {"medium": 250, "volume": 120, "temperature": 120, "agitation": 200},
    choices,
)
st.header("What there is to temper with, besides", anchor=False)
part_form.table("workshop.temper", {"means": 250, "ceiling": 120})
st.header("How heat and hardness are judged", anchor=False)
with st.container(horizontal=True):
    ask("workshop.measure", width=420)
    ask("workshop.check", width=420)
    ask("workshop.light", width=200)
    ask("workshop.held_by", width=200)
    ask("workshop.protect", width=260)
    ask("workshop.machine", width=300)
for place in ("turns_part", "subcontract", "only_stock"):
    ask(f"workshop.{place}")
with st.expander("How practised the hand is"), st.container(horizontal=True):
    for name in ("bias", "scatter", "delay"):
        ask(f"workshop.skill.{name}", width=190)
st.header("Your rack", anchor=False)
part_form.table(
    "workshop.stock",
    {"steel": 260, "condition": 160, "size": 120, "evidence": 160, "hardness": 140},
)
part_form.analyses()
st.header("Your prices", anchor=False)
prices = cached.catalog().prices
whose = "invented for demonstration" if prices.invented else "those of your price list"
small(f"In {plain(prices.currency)}. What you do not give is {whose}.")
ask("workshop.labour_per_h", width=240)
part_form.table("workshop.price", {"steel": 260, "per_kg": 160})
st.header("Your letterhead", anchor=False)
small("It stands over the letters to your customers. Blank, they go out without one.")
letterhead.ask()
frame.link("part", "Back to the part")
