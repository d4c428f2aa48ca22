"""One widget a question, its words from the requirement, its faults and its echo beneath."""

import math
from collections.abc import Iterable
from typing import Any

import streamlit as st

from selector.errors import Problem
from selector.requirement.question import Question, question, titled
from ui import draft as drafts
from ui import fields, held, labels, session
from ui.echo import echo
from ui.fitting import MOST_LETTERS

# A letter of a hint, which stands under its widget in two lines at most. [px]
_LETTER = 6.2
# How a file may say yes to a tick.
_YES = frozenset({"true", "yes", "y", "t", "on", "1"})


def faults(problems: Iterable[Problem]) -> dict[str, list[str]]:
    """Return what is wrong, by the place where it is shown.

    Parameters
    ----------
    problems : iterable of Problem
        Broken rules.

    Returns
    -------
    dict
        Sentences by place.
    """
    by_place: dict[str, list[str]] = {}
    for problem in problems:
        by_place.setdefault(problem.field, []).append(_rule(problem))
    return by_place


def _rule(problem: Problem) -> str:
    """Return a problem at its own field: what is wanted and the next step."""
    if problem.got == "nothing":
        return "Please answer."
    return f"Must be {problem.rule}; got {problem.got}. {problem.next_step}"


def sentence(problem: Problem) -> str:
    """Return a problem away from its field: with its title and its key."""
    asked = question(problem.field)
    name = f"{titled(problem.field)} ({problem.field})" if asked else problem.field
    return f"{name}: {labels.lower(_rule(problem))}"


def summary(problems: Iterable[Problem]) -> str:
    """Return in one line how many answers need attention, and which come first."""
    names = list(dict.fromkeys(titled(problem.field) for problem in problems))
    if not names:
        return ""
    listed = "; ".join(names[:3]) + ("; …" if len(names) > 3 else "")
    return labels.plain(f"To be looked at ({len(names)}): {listed}")


def line(*paths: str, drop: str = "") -> None:
    """Ask questions side by side, those of them that are asked of this part.

    Parameters
    ----------
    *paths : str
        Where the answers stand, for instance "part.section.1.size".
    drop : str
        The row that can be removed at the end of the line, if any: "part.section.1".
    """
    draft = session.here().draft
    asked = [path for path in paths if fields.is_asked(draft, path)]
    over = paths[0].rpartition(".")[0]
    if not asked:
        return
    _head(over)
    with st.container(horizontal=True, vertical_alignment="top", key=f"line/{paths[0]}"):
        for path in asked:
            _ask(path, drafts.read(draft, path))
        if drop:
            block, _, number = drop.rpartition(".")
            st.button(
                f"Remove {fields.ROWS[block][0]} {number}", key=f"drop/{drop}", type="tertiary",
                on_click=_drop, args=(block, int(number)),
            )  # fmt: skip
    long = [
        f"{fields.title(path)}: {labels.lower(hint)}"
        for path in asked
        if not _has_room(path, hint := _hint(path))
    ]
    if long:
        st.caption(labels.plain(" ".join(long)))
    wrong_at(over)


def _drop(block: str, number: int) -> None:
    """Remove a row."""
    session.change(lambda draft: drafts.drop_row(draft, block, number))


def _head(table: str) -> None:
    """Show what the questions of a table within a row are about."""
    asked = question(table)
    if asked and asked.kind == "table" and table.rpartition(".")[0][-1:].isdigit():
        st.markdown(f"**{labels.plain(asked.title)}** {labels.plain(asked.text)}")


def _hint(path: str) -> str:
    """Return what may be answered to a blank question; only in the first of several rows."""
    asked = question(path)
    is_first = all(key == "1" for key in path.split(".") if key.isdigit())
    is_blank = drafts.read(session.here().draft, path) is None
    return asked.text if asked and is_first and is_blank else ""


def _has_room(path: str, hint: str) -> bool:
    """Return whether a hint has room under its own widget."""
    wide = fields.width(path)
    return wide == "content" or len(hint) * _LETTER <= 2 * wide


def show_faults(problems: Iterable[Problem]) -> None:
    """Have what is wrong shown at each question that is asked from now on in this run."""
    held.show_wrong(faults(problems))


def wrong_at(*places: str) -> None:
    """Show what is wrong at places."""
    for place in places:
        for text in held.wrong().get(place, ()):
            st.markdown(f":red[{labels.plain(text)}]")


def _ask(path: str, value: Any) -> None:  # noqa: ANN401
    """Ask one question, and show what is wrong with its answer, or it in the other unit."""
    asked = question(path)
    if asked is None:
        raise KeyError(path)
    with st.container(width=fields.width(path), gap=None, key=f"ask/{path}"):
        _widget(path, asked, value)
        if path in held.wrong():
            wrong_at(path)
        elif asked.unit_kind and (other := echo(value, asked.unit_kind)):
            st.caption(labels.plain(other))
        elif (hint := _hint(path)) and _has_room(path, hint):
            st.caption(labels.plain(hint))


def _widget(path: str, asked: Question, value: Any) -> None:  # noqa: ANN401
    """Show the widget of one question: a choice, several, a tick, or a text to type."""
    known = fields.choices(session.here().draft, path)
    kind = "choice" if known and asked.kind == "text" else asked.kind
    given = fields.usual(path) if value is None else value
    one = given if kind == "choice" and given in known else None
    choice: dict[str, Any] = {"options": known, "format_func": known.__getitem__}

    def back(shown: Any) -> dict[str, Any]:  # noqa: ANN401
        key = held.widget(path, shown)
        kept = {"key": key, "on_change": _keep, "args": (key, path, kind)}
        return {"label": fields.title(path), **kept}

    match kind:
        case "choice" if fields.is_side_by_side(path):
            st.radio(index=None, horizontal=True, **choice, **back(one))
        case "choice":
            must = asked.needed or asked.default is not None
            st.selectbox(index=None, placeholder="", required=must, **choice, **back(one))
        case "many" if known:
            several = [answer for answer in given or () if answer in known]
            st.multiselect(placeholder="", **choice, **back(several))
        case "tick":
            st.checkbox(**back(str(given).casefold() in _YES))
        case _:
            st.text_input(max_chars=MOST_LETTERS, **back(_as_text(given)))


def _as_text(value: object) -> str:
    """Return an answer as it would be typed."""
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return ", ".join(map(str, value))
    return f"{value:.12g}" if isinstance(value, float) else labels.degrees(str(value))


def _keep(key: str, path: str, kind: str) -> None:
    """Keep what was answered; a bare number stands for itself, an unticked box for nothing."""
    if key != held.key_of(path) or not fields.is_asked(session.here().draft, path):
        return
    value, asked = held.value_of(key), question(path)
    if kind == "many":
        given = value.split(",") if isinstance(value, str) else value
        names = [name.strip() if isinstance(name, str) else name for name in given]
        # None at all is an answer only where the question has one.
        has_none = asked is None or asked.default is not None
        value = [name for name in names if name != ""] or ([] if has_none else None)
    elif kind not in {"choice", "tick", "text"}:
        value = _bare_number(value.strip())
    session.keep(path, value or None if kind == "tick" else value)


def _bare_number(text: str) -> str | float:
    """Return a text, or the number it is when it has no unit."""
    try:
        number = float(text)
    except ValueError:
        return text
    return number if math.isfinite(number) else text
