"""What one visitor's session holds; no other file names its keys.

`draft`   the form as plain data, kept while the visitor looks at other views
`filled`  how often the form was filled anew; part of every widget's key, so that a browser
          still showing the form before cannot answer for this one
`tried`   whether advice was asked for, so that faults are shown from then on
`refused` why the last file was not taken
`asked`   the last requirement that gave advice
"""

from collections.abc import Iterable
from typing import Any

import streamlit as st

from catalog.example import example_names, example_text
from selector import Requirement
from selector.errors import Problem
from ui.draft import Draft, put
from ui.upload import parsed

EXAMPLE = "start/example"
FILE = "start/file"


def begin() -> None:
    """Give a fresh session its first values: the usual example, or a blank form."""
    if "draft" not in st.session_state:
        names = example_names()
        st.session_state["draft"] = example(names[0]) if names else blank()
        st.session_state["filled"] = 0
        st.session_state["tried"] = False
        st.session_state["refused"] = ()
        st.session_state["asked"] = None


def blank() -> Draft:
    """Return a form with one empty section and one empty zone."""
    return {
        "part": {"section": [{}]},
        "zone": [{"section": [1]}],
        "load": {},
        "workshop": {"heat": [{}]},
    }


def example(name: str) -> Draft:
    """Return a shipped example without its safety use, which each user must answer.

    Parameters
    ----------
    name : str
        One of the shipped names.

    Returns
    -------
    dict
        A draft of the form.
    """
    data = parsed(f"{name}.toml", example_text(name).encode())
    data.pop("safety_use", None)
    return data


def draft() -> Draft:
    """Return the form as it stands."""
    form: Draft = st.session_state["draft"]
    return form


def replace(data: Draft, *, tried: bool = False) -> None:
    """Put other contents into the form.

    Parameters
    ----------
    data : dict
        A draft.
    tried : bool
        Whether its faults are shown at once.
    """
    st.session_state["draft"] = data
    st.session_state["tried"] = tried
    st.session_state["refused"] = ()
    st.session_state["filled"] += 1


def rows_changed() -> None:
    """Let the widgets be filled anew, because rows were added or taken away."""
    replace(draft(), tried=tried())


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
    key = f"part/{st.session_state['filled']}/{path}"
    if key not in st.session_state:
        st.session_state[key] = value
    return key


def held(key: str) -> Any:  # noqa: ANN401
    """Return what the widget with this key holds."""
    return st.session_state[key]


def shows(key: str) -> bool:
    """Return whether a widget belongs to the form as it was last filled."""
    return key.startswith(f"part/{st.session_state['filled']}/")


def keep(path: str, value: Any) -> None:  # noqa: ANN401
    """Keep one answer in the draft."""
    put(draft(), path, value)


def tried() -> bool:
    """Return whether faults of the form are to be shown."""
    return bool(st.session_state["tried"])


def attempt() -> None:
    """Note that advice was asked for."""
    st.session_state["tried"] = True


def refuse(problems: Iterable[Problem]) -> None:
    """Keep why a file was not taken."""
    st.session_state["refused"] = tuple(problems)


def refused() -> tuple[Problem, ...]:
    """Return why the last file was not taken; empty when it was."""
    problems: tuple[Problem, ...] = st.session_state["refused"]
    return problems


def answered(requirement: Requirement) -> None:
    """Keep the requirement whose advice is shown from now on."""
    st.session_state["asked"] = requirement


def asked() -> Requirement | None:
    """Return the requirement whose advice is shown, if there is one yet."""
    requirement: Requirement | None = st.session_state["asked"]
    return requirement
