"""The choice: headline, ranked table, the reasons for one option, the trade-off."""

import streamlit as st

from selector.advice.record import AdviceOut
from selector.advice.table import option_table
from selector.record import OptionOut
from ui import answer, cached, charts, labels, piece, table

FIRST = 10


def _ranked(advice: AdviceOut) -> tuple[OptionOut, ...]:
    """Show the ranked table and return the options it shows."""
    st.header("Ranked")
    every = len(advice.options)
    wide = every > FIRST and st.toggle(f"Show all {every}", key="choice/all")
    options = advice.options if wide else advice.options[:FIRST]
    media = {slug: medium.name for slug, medium in cached.catalog().media.items()}
    piece.table(table.ranking(options, media))
    if advice.options[0].cost.invented_prices:
        piece.small("Prices are invented for demonstration; put in your own.")
    if advice.why_first:
        why = labels.plain(labels.upper(advice.why_first))
        st.markdown(f"**Why the first stands before the second.** {why}")
    numbers, everything = option_table(advice).to_csv(index=False), advice.model_dump_json()
    with st.container(horizontal=True):
        piece.download("Table as CSV", numbers, "ranking.csv")
        piece.download("Everything as JSON", everything, "advice.json")
    return options


def _reasons(advice: AdviceOut) -> None:
    """Show one option closely."""
    st.header("Reasons")
    option = st.selectbox(
        "Option", advice.options, format_func=labels.option, key="choice/option"
    )
    left, right = st.columns([11, 9], gap="medium")
    with left:
        piece.bullets(option.reasons)
        st.markdown(f"**Chief risk:** {labels.plain(option.chief_risk)}")
        piece.table(table.predicted(option))
        piece.table(table.demands(option))
    with right:
        piece.table(table.criteria(option, advice.ranges))
        piece.table(table.cost_items(option))
        if option.crack:
            st.markdown(f"**Against quench cracks** (class {option.crack.crack_class})")
            piece.bullets(option.crack.helps)
    piece.small(f"Id of this option: {option.id}")


def _trade_off(advice: AdviceOut, options: tuple[OptionOut, ...]) -> None:
    """Show the chart."""
    st.header("Trade-off")
    against = st.radio(
        "Cost against",
        charts.AGAINST,
        format_func=charts.AGAINST.__getitem__,
        horizontal=True,
        key="choice/against",
    )
    chart = charts.trade_off(options, advice.zones, against)
    st.altair_chart(chart, key="choice/chart", alt=charts.ALT)
    piece.small("Bars reach from 5 to 95 in 100; point at a mark for more.")


advice = answer.shown()
st.title(labels.plain(advice.part))
st.badge(labels.VERDICTS[advice.verdict], color=labels.COLOURS[advice.verdict])
st.markdown(f"#### {labels.plain(advice.headline)}")
piece.table(table.asked(advice))
if advice.options:
    shown = _ranked(advice)
    _reasons(advice)
    _trade_off(advice, shown)
else:
    st.page_link("views/why_not.py", label="See what binds and what came nearest")
