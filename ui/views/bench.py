"""At the bench: the steps in order of work with ticks, and the card to print and take along."""

import streamlit as st

from ui import answer, cached, held, picture, session, sheets, work
from ui.labels import plain
from ui.option_name import in_short, unplaced
from ui.piece import markup, panel

requirement = answer.asked()
st.title("At the bench", anchor=False)
advice = answer.offered(requirement, "There is no card to work by yet.")
named = {option.id: in_short(option) for option in advice.options}
chosen = st.selectbox(
    "Option", named, format_func=named.__getitem__,
    **held.lasting("bench/option", next(iter(named)), named),
)  # fmt: skip
option = next(option for option in advice.options if option.id == chosen)
known = cached.weighed(requirement)
# A phone shows but the beginning of what was chosen.
st.markdown(f"**{plain(unplaced(option))}**")
sheets.card_to_take(known, option)
markup(work.dangers(advice.cautions, option))
markup(
    "<div class='tw-panel'>", picture.of_option(known.job, known.options[option.place - 1]),
    picture.key(known.job), "</div>",
)  # fmt: skip
# What was ticked of the part as it was is not done of the part as it is.
mark = session.asked_mark()
for step in option.procedure:
    with panel(f"step/{step.number}"):
        st.checkbox(
            f"{step.number}. {plain(step.action)}",
            **held.lasting(f"bench/{mark}/{chosen}/{step.number}", first=False),
        )  # fmt: skip
        markup(work.beneath(step))
