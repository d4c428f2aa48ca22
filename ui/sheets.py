"""The sheets of an option and the figures of an advice, to print and take along."""

from datetime import UTC, datetime
from functools import partial

import streamlit as st

from selector import Requirement
from selector.advice.advise import Advice
from selector.handover.card import card, template_of
from selector.handover.chosen import Chosen
from selector.handover.sheet import Paper, sheet
from selector.handover.version import version_of
from selector.record import OptionOut
from ui import cached
from ui.piece import download


def chosen_of(advice: Advice, record: OptionOut) -> Chosen:
    """Return an option of an advice as what its sheets are made of."""
    option = next(option for option in advice.options if option.id == record.id)
    return Chosen(advice.job, option, record, record.spoken, advice)


def card_file(advice: Advice, record: OptionOut, suffix: str, paper: Paper = "a4") -> bytes:
    """Return the card of an option as the content of a file.

    Parameters
    ----------
    advice : Advice
        What the option stands in.
    record : OptionOut
        The option.
    suffix : str
        ".pdf" or ".html".
    paper : str
        "a4" or "letter".

    Returns
    -------
    bytes
        The file.
    """
    made_for = chosen_of(advice, record)
    today = datetime.now(UTC).astimezone().date()
    data = card(made_for, paper, today, version_of())
    return sheet(template_of(made_for), data, suffix, paper).content


def card_to_take(advice: Advice, record: OptionOut) -> None:
    """Offer the card of an option, made only when it is asked for."""
    with st.container(horizontal=True):
        for suffix, mime in ((".pdf", "application/pdf"), (".html", "text/html")):
            st.download_button(
                f"Card as {suffix[1:].upper()}",
                partial(card_file, advice, record, suffix),
                f"card{suffix}", mime, key=f"card/{suffix}", on_click="ignore",
            )  # fmt: skip


def advice_to_take(asked: Requirement) -> None:
    """Offer the figures of an advice, written only when they are asked for."""
    with st.container(horizontal=True):
        download("Table as CSV", partial(_table, asked), "ranking.csv")
        download("Everything as JSON", partial(_everything, asked), "advice.json")


def _table(asked: Requirement) -> str:
    """Return the options as CSV; the library of tables is loaded when it is asked for."""
    from selector.advice.table import option_table  # noqa: PLC0415

    return option_table(cached.advice(asked)).to_csv(index=False)


def _everything(asked: Requirement) -> str:
    """Return the whole advice as JSON."""
    return cached.advice(asked).model_dump_json()
