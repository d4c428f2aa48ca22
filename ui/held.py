"""What the widgets of one visitor's session hold, and what is said beside them."""

from collections.abc import Iterable, Sequence
from typing import Any

import streamlit as st

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
    visit = here()
    key = f"{visit.id}/{visit.fill}/{path}"
    if key not in st.session_state:
        st.session_state[key] = value
    return key


def value_of(key: str) -> Any:  # noqa: ANN401
    """Return what the widget with this key holds."""
    return st.session_state.get(key)


def filled(key: str, value: Any) -> str:  # noqa: ANN401
    """Return the key of a widget that answers no question of a part, filled when it is new."""
    st.session_state.setdefault(key, value)
    return key


def one_of(key: str, choices: Sequence[str], first: str) -> str:
    """Return the key of a widget that holds one of its choices, `first` where it held none."""
    if st.session_state.get(key) not in choices:
        st.session_state[key] = first
    return key


def fill_in(key: str, value: str) -> None:
    """Write an answer into the widget with this key, before it is drawn again."""
    st.session_state[key] = value


def shows(key: str) -> bool:
    """Return whether a widget belongs to the form as it was last filled."""
    visit = here()
    return key.startswith(f"{visit.id}/{visit.fill}/")


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
