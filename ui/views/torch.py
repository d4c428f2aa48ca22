"""The torch: verdict, map, windows against the eye, what must not go wrong, the change."""

import streamlit as st

from selector.errors import SelectorError
from ui import answer, cached, figures, picture, steel_name, stuck, torch_view
from ui.labels import plain, upper
from ui.piece import bullets, headline, markup, panel

# So many letters of a reason still stand in two large lines beside its word.
LONG = 60

requirement = answer.asked()
with st.container(horizontal=True, vertical_alignment="bottom", key="torch/title"):
    said = st.container(width="stretch")
    with st.container(width="content"):
        name = steel_name.ask("One steel alone, by any name", "torch/steel", 300)
if name and not cached.catalog().find(name):
    steel_name.unknown(name, "torch/steel")
    name = ""
advice = answer.shown(requirement)
with st.spinner("Heating it in the model"):
    try:
        found = cached.flame(requirement, name or None)
    except SelectorError as error:
        st.error(plain(str(error)))
        st.stop()
with said, st.container(horizontal=True, vertical_alignment="center", key="torch/verdict"):
    markup(torch_view.verdict(found))
    headline(upper(found.why), LONG)
best = next((f for f in found.families if f.option is not None), None)
if best is not None and best.option is not None:
    first = best.option
    st.markdown(plain(f"{first.spoken}. {torch_view.hard_stretch(best.figures)}"))
    answered = cached.torched(requirement, name or None)
    heated = next((v.option for v in answered.verdicts if v.option is not None), None)
    brittle = heated.treatment.steel.embrittlement_c if heated is not None else ()
    if heated is not None:
        markup(
            "<div class='tw-panel'>", picture.of_option(answered.job, heated),
            picture.key(answered.job), "</div>",
        )  # fmt: skip
    left, right = st.columns(2)
    if first.set_up is not None:
        text, drawn = torch_view.heat_window(first.set_up, best.figures)
        with left, panel("heat"):
            st.header("Can you see the right heat?", anchor=False)
            st.markdown(plain(text))
            markup(drawn)
    text, drawn = torch_view.temper_window(first.temper, brittle)
    with right, panel("temper"):
        st.header("And the right temper?", anchor=False)
        st.markdown(plain(text))
        markup(drawn)
    with panel("demands"):
        st.header("What must not go wrong", anchor=False)
        markup(torch_view.demands(first, best.figures))
        bullets(upper(text) for text in best.conditions)
if found.verdict in {"no", "not_needed"}:
    stuck.instead_of_torch(advice)
if found.families:
    change = next((f.change for f in found.families if f.change is not None), None)
    with panel("change"):
        st.header("The one change", anchor=False)
        st.markdown(plain(torch_view.changed(found.verdict, change)))
if found.families:
    with panel("families"):
        st.header("Every family by this torch", anchor=False)
        markup(torch_view.others(found.families))
        if found.residual_heat is not None:
            st.subheader("Quench the end and let the colour run down", anchor=False)
            markup(torch_view.others((found.residual_heat,)))
if found.cautions:
    st.header("Look out, step by step", anchor=False)
    markup(figures.look_out(found.cautions))
with st.expander("What was assumed"):
    bullets(found.assumptions)
