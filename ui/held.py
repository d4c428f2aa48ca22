"""What the widgets of one visitor's session hold, and what is said beside them."""

from collections.abc import Collection, Iterable
from typing import Any

import streamlit as st

from ui import session
from ui.look import looked_up
from ui.session import here


def widget(path: str, value: Any) -> str:  # noqa: ANN401
    """Return the key of a field's widget, filled from the draft when it is new.

    Parameters
    ----------
    path : str
        Where the field is, for instance "part.section.1.size".
    value : object
        What the draft holds, as the widget shows it.

    Returns
    -------
    str
        Key of the widget.
    """
    key = key_of(path)
    if key not in st.session_state:
        st.session_state[key] = value
    return key


def key_of(path: str) -> str:
    """Return the key of a field's widget as it was last filled, by itself or with its row."""
    visit, within = here(), path.split(".")
    fills = sum(visit.fills[".".join(within[:end])] for end in range(1, len(within) + 1))
    return f"{visit.form}/{fills}/{path}"


def value_of(key: str) -> Any:  # noqa: ANN401
    """Return what the widget with this key holds."""
    return looked_up(lambda: st.session_state.get(key))


def filled(key: str, value: Any) -> str:  # noqa: ANN401
    """Return the key of a widget that answers no question of a part, filled when it is new."""
    st.session_state.setdefault(key, value)
    return key


def lasting(name: str, first: Any, choices: Collection[Any] | None = None) -> dict[str, Any]:  # noqa: ANN401
    """Return how a widget of a view is held so that its answer lasts as long as the part.

    Parameters
    ----------
    name : str
        Of the widget.
    first : object
        What it holds at first.
    choices : collection, optional
        What it may hold; what is no longer among them gives way to the first.

    Returns
    -------
    dict
        Arguments of the widget.
    """
    part = session.held_part()
    value = st.session_state.get(name, part.noted.get(name, first) if part else first)
    sound = isinstance(value, type(first)) and (choices is None or value in choices)
    # What it holds already is let be: the visitor may be typing.
    if not sound or name not in st.session_state:
        st.session_state[name] = value if sound else first
    return {"key": name, "on_change": lambda: session.note(name, value_of(name))}


def fill_in(name: str, value: str) -> None:
    """Write an answer into a widget that lasts, before it is drawn again."""
    st.session_state[name] = value
    session.note(name, value)


def tell(key: str, texts: Iterable[str]) -> None:
    """Keep why what was given to the widget with this key was not taken."""
    st.session_state[f"told/{key}"] = tuple(texts)


def told(key: str) -> tuple[str, ...]:
    """Return, once, why what was given to the widget with this key was not taken."""
    texts: tuple[str, ...] = st.session_state.pop(f"told/{key}", ())
    return texts


def show_wrong(sentences: dict[str, list[str]]) -> None:
    """Have faults shown at their places while this run draws the form."""
    st.session_state["wrong"] = sentences


def wrong() -> dict[str, list[str]]:
    """Return the faults to be shown, by place."""
    sentences: dict[str, list[str]] = st.session_state.get("wrong", {})
    return sentences
