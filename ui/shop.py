"""The workshop of a part: one kept by name, or the part's own; what is in it."""

import streamlit as st

from ui import fields, frame, held, session
from ui.draft import Draft
from ui.labels import degrees, lower, plain, words

_OWN = "This part's own"


def choose() -> None:
    """Ask which workshop, and say what it has."""
    visit = session.here()
    names = [_OWN, *session.workshops()]
    key = held.widget("shop", visit.shop or _OWN)
    st.selectbox("Workshop", names, key=key, on_change=_chosen, args=(key,), placeholder="")
    lines = summary(visit.draft.get("workshop") or {})
    if not lines:
        st.markdown("Nothing is said of it yet: without heat only bought hardness is left.")
    st.markdown("  \n".join(f"**{head}** {plain(text)}" for head, text in lines.items()))
    frame.link("workshop", "Change the workshop or its rack")


def _chosen(key: str) -> None:
    """Put the part into the chosen workshop."""
    name = held.value_of(key)
    session.use_workshop(None if name == _OWN else name)


def summary(table: Draft) -> dict[str, str]:
    """Return what a workshop has, in a few lines.

    Parameters
    ----------
    table : dict
        The workshop, in the shape of a requirement file.

    Returns
    -------
    dict
        Text by head, without what it has not.
    """
    heats = [_named(row, "workshop.heat.source") for row in table.get("heat", ())]
    baths = [_named(row, "workshop.bath.medium") for row in table.get("bath", ())]
    bars = [
        f"{row.get('steel', '?')} {row.get('size', '')}".strip()
        for row in table.get("stock", ())
    ]
    lines = {
        "Heat": ", ".join(heats),
        "Baths": ", ".join(baths),
        "Reads": ", ".join(lower(words(name)) for name in table.get("measure", ())),
        "Rack": ", ".join(bars),
        "Sends out": "yes" if table.get("subcontract") else "",
    }
    return {head: text for head, text in lines.items() if text}


def _named(row: Draft, path: str) -> str:
    """Return one heat source or bath by its name, with what the user said of it."""
    name = str(row.get(path.rpartition(".")[2], "?"))
    said = [str(row[key]) for key in ("gas_flow", "volume") if key in row]
    said += [f"to {row['ceiling']}"] if "ceiling" in row else []
    named = fields.choices({}, path).get(name, name)
    return degrees(" ".join([lower(named), *said]))
