"""The torch: verdict, map, windows against the eye, what must not go wrong, the change."""

import streamlit as st

from selector.errors import SelectorError
from ui import answer, cached, figures, picture, torch_view
from ui.labels import plain, upper
from ui.piece import bullets, markup

requirement = answer.asked()
name = st.text_input(
    "One steel alone, by any name", key="torch/steel", width=320, max_chars=80
).strip()
if name and not cached.catalog().find(name):
    st.markdown(plain(f"No steel is called {name}; the best of all is shown."))
    name = ""
with st.spinner("Heating it in the model"):
    try:
        found = cached.flame(requirement, name or None)
    except SelectorError as error:
        st.error(plain(str(error)))
        st.stop()
with st.container(horizontal=True, vertical_alignment="center", key="torch/title"):
    markup(torch_view.verdict(found))
    st.title(plain(upper(found.why)), anchor=False)
best = next((f for f in found.families if f.option is not None), None)
if best is not None and best.option is not None:
    first = best.option
    st.markdown(
        plain(
            f"{first.spoken}. "
            + (torch_view.hard_stretch(best.figures) if best.figures else "")
        )
    )
    answered = cached.torched(requirement, name or None)
    heated = next((v.option for v in answered.verdicts if v.option is not None), None)
    if heated is not None:
        markup(
            "<div class='tw-panel'>", picture.of_option(answered.job, heated),
            picture.key(answered.job), "</div>",
        )  # fmt: skip
    left, right = st.columns(2, border=True)
    if first.set_up is not None:
        said, drawn = torch_view.heat_window(first.set_up, best.figures)
        with left:
            st.header("Can you see the right heat?", anchor=False)
            st.markdown(plain(said))
            markup(drawn)
    said, drawn = torch_view.temper_window(first.temper)
    with right:
        st.header("And the right temper?", anchor=False)
        st.markdown(plain(said))
        markup(drawn)
    with st.container(border=True):
        st.header("What must not go wrong", anchor=False)
        markup(torch_view.demands(first, best.figures))
        bullets(upper(text) for text in best.conditions)
change = next((f.change for f in found.families if f.change is not None), None)
with st.container(border=True):
    st.header("The one change", anchor=False)
    st.markdown(plain(upper(change.text)) if change else "None needed, or none that would do.")
with st.container(border=True):
    st.header("Every family by this torch", anchor=False)
    markup(torch_view.others(found.families))
    if found.residual_heat is not None:
        st.subheader("Quench the end and let the colour run down", anchor=False)
        markup(torch_view.others((found.residual_heat,)))
st.header("Look out, step by step", anchor=False)
markup(figures.look_out(found.cautions))
with st.expander("What was assumed"):
    bullets(found.assumptions)
