"""What the customer is told: bar, work, reasons, price and what else could be done."""

import streamlit as st

from selector.advice.record import AdviceOut
from selector.record import CostOut
from selector.wording import condition_words, shown_spread
from ui.figures import days_words
from ui.labels import upper
from ui.piece import download


def shown_cost(cost: CostOut) -> str:
    """Return a cost with its range."""
    spread = cost.spread
    ends = f"{spread.p05 or 0:.0f} to {spread.p95 or 0:.0f}"
    return f"{spread.p50 or 0:.0f} {cost.currency} ({ends})"


def letter(advice: AdviceOut) -> str:
    """Return the text for the customer.

    Parameters
    ----------
    advice : AdviceOut
        The advice; its first option is what is offered.

    Returns
    -------
    str
        Paragraphs.
    """
    first = advice.options[0]
    lines = [
        advice.part,
        f"We propose {first.spoken}, {condition_words(first.condition)}. {advice.headline}",
        f"It comes out at {shown_spread(first.hardness.surface)} where it works.",
        f"In hand in {days_words(first.days)} days.",
        "Why: " + "; ".join(first.reasons) + ".",
        f"A good part costs us {shown_cost(first.cost)}.",
    ]
    lines += [
        f"Instead: {way.bar}, {way.doing}. {upper(way.why_not_first)}."
        for way in advice.alternatives
    ]
    if first.cost.invented_prices:
        lines.append("Prices are invented for demonstration.")
    return "\n\n".join(lines)


def show(advice: AdviceOut) -> None:
    """Show the text, to be changed and taken along."""
    text = st.text_area(
        "The letter", letter(advice), height=420, key=f"letter/{advice.options[0].id}"
    )
    download("Take the text", text, "letter.txt")
