"""The choice: what to do, four figures, the part, three ways, weights, rack, list, why not."""

import streamlit as st

from selector.advice.against import against_shares
from selector.advice.record import AdviceOut
from ui import (
    answer,
    cached,
    change,
    figures,
    frame,
    picture,
    sheets,
    stuck,
    ways,
    weights,
    why_not,
)  # fmt: skip
from ui.labels import plain
from ui.piece import bullets, headline, markup, small
from ui.words import first_sentence

# So many letters of a headline still stand in two large lines.
LONG = 110


requirement = answer.asked()
advice: AdviceOut = answer.shown(requirement)
title, rest = first_sentence(advice.headline)
headline(title, LONG)
passed_on = requirement.safety_critical
with st.container(horizontal=True, vertical_alignment="center", key="under-title"):
    st.markdown(plain(rest), width="stretch")
    if advice.options and not passed_on:
        frame.link("bench", "Bench card")
        frame.link("customer", "Letter")
if passed_on or not advice.options:
    stuck.show(requirement, advice)
    st.stop()
first = advice.options[0]
known = cached.weighed(requirement)
job, ranked = known.job, known.options
markup(figures.four(first, advice.zones, requirement.limit.budget))
st.header("Where it is hard", anchor=False)
markup(
    "<div class='tw-panel'>", picture.of_option(job, ranked[0]),
    picture.key(job), "</div>",
)  # fmt: skip
change.show(requirement, advice)
fill_in = ways.show(requirement, advice)
weights.show(requirement)
if advice.rack:
    st.header("What your rack could do", anchor=False)
    markup(figures.rack_cards(advice.rack))
st.header(f"All {len(advice.options)} that work, by route", anchor=False)
markup("<div class='tw-panel'>", figures.listing(advice, requirement.limit.budget), "</div>")
bullets(against_shares(known))
why_not.show(requirement)
st.header("Look out, step by step", anchor=False)
markup(figures.look_out(advice.cautions))
with st.expander("Worth knowing, and what was assumed"):
    bullets((*advice.remarks, *advice.would_change, *advice.assumptions, *advice.coupon))
if first.cost.invented_prices:
    small("Prices are invented for demonstration; put in your own.")
sheets.advice_to_take(requirement)
fill_in()
