"""The choice: headline, ranked table, the reasons for one option, the trade-off."""

import streamlit as st

from selector.advice.record import AdviceOut, OptionOut
from selector.advice.table import option_table
from ui import answer, cached, charts, draw, labels, table

FIRST = 10


def _ranked(found: AdviceOut) -> tuple[OptionOut, ...]:
    """Draw the ranked table and return the options it shows."""
    st.header("Ranked")
    every = len(found.options)
    wide = every > FIRST and st.toggle(f"Show all {every}", key="choice/all")
    options = found.options if wide else found.options[:FIRST]
    media = {slug: medium.name for slug, medium in cached.catalog().media.items()}
    draw.table(table.ranking(options, media))
    if found.options[0].cost.invented_prices:
        draw.small("Prices are invented for demonstration; put in your own.")
    if found.why_first:
        why = labels.plain(labels.upper(found.why_first))
        st.markdown(f"**Why the first stands before the second.** {why}")
    numbers, everything = option_table(found).to_csv(index=False), found.model_dump_json()
    with st.container(horizontal=True):
        draw.download("Table as CSV", numbers, "ranking.csv")
        draw.download("Everything as JSON", everything, "advice.json")
    return options


def _reasons(found: AdviceOut) -> None:
    """Draw one option closely."""
    st.header("Reasons")
    option = st.selectbox(
        "Option", found.options, format_func=labels.option, key="choice/option"
    )
    left, right = st.columns([11, 9], gap="medium")
    with left:
        draw.bullets(option.reasons)
        st.markdown(f"**Chief risk:** {labels.plain(option.chief_risk)}")
        draw.table(table.predicted(option))
        draw.table(table.demands(option))
    with right:
        draw.table(table.criteria(option, found.ranges))
        draw.table(table.cost_items(option))
        if option.crack:
            st.markdown(f"**Against quench cracks** (class {option.crack.crack_class})")
            draw.bullets(option.crack.helps)
    draw.small(f"Id of this option: {option.id}")


def _trade_off(found: AdviceOut, options: tuple[OptionOut, ...]) -> None:
    """Draw the chart."""
    st.header("Trade-off")
    against = st.radio(
        "Cost against",
        charts.AGAINST,
        format_func=charts.AGAINST.__getitem__,
        horizontal=True,
        key="choice/against",
    )
    chart = charts.trade_off(options, found.zones, against)
    st.altair_chart(chart, key="choice/chart", alt=charts.ALT)
    draw.small("Bars reach from 5 to 95 in 100 draws; point at a mark for more.")


found = answer.shown()
st.title(labels.plain(found.part))
st.badge(labels.VERDICTS[found.verdict], color=labels.COLOURS[found.verdict])
st.markdown(f"#### {labels.plain(found.headline)}")
draw.table(table.asked(found))
if found.options:
    shown = _ranked(found)
    _reasons(found)
    _trade_off(found, shown)
else:
    st.page_link("views/why_not.py", label="See what binds and what came nearest")
