"""One widget a question, its words from the requirement, its faults and its echo beneath."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, Literal

import streamlit as st

from selector.errors import Problem
from selector.requirement.question import Question, question, titled, without_rows
from ui import draft as drafts
from ui import held, labels, session
from ui.echo import echo
from ui.fitting import MOST_LETTERS

Width = int | Literal["stretch"]
# The names of what the catalogue holds are chosen from, beside the closed sets of the models.
Choices = Mapping[Any, str]
_HAVE_DEFAULTS = frozenset({"choice", "many", "tick", "count"})


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


def ask(
    path: str,
    *,
    width: Width = "stretch",
    label: str | None = None,
    choices: Choices | None = None,
    rows: bool = False,
    hint: bool = True,
) -> None:
    """Ask one question of the part at hand.

    Parameters
    ----------
    path : str
        Where the answer stands, for instance "part.section.1.size".
    width : int or "stretch"
        In pixels.
    label : str, optional
        Instead of its title, where the place of the question says it better.
    choices : mapping, optional
        What can be chosen, where the requirement itself does not say.
    rows : bool
        Whether few answers are shown side by side instead of in a list.
    hint : bool
        Whether what may be answered stands under a blank one.

    Raises
    ------
    KeyError
        When the requirement has no such field.
    """
    asked = question(path)
    if asked is None:
        raise KeyError(path)
    value = drafts.read(session.here().draft, path)
    with st.container(width=width, gap=None, key=f"ask/{path}"):
        _widget(path, asked, value, label or asked.title, choices=choices, rows=rows)
        _beneath(path, asked, value, hint=hint)


def hints(paths: Iterable[str]) -> None:
    """Show in one line what may be answered to those of a row of questions that are blank."""
    draft = session.here().draft
    known = [(path, question(path)) for path in paths]
    texts = [
        f"{asked.title}: {labels.lower(asked.text)}"
        for path, asked in known
        if asked is not None and asked.text and drafts.read(draft, path) is None
    ]
    if texts:
        st.caption(labels.plain(" ".join(texts)))


def _beneath(path: str, asked: Question, value: object, *, hint: bool) -> None:
    """Show what is wrong with an answer, else what it is in the other unit."""
    if path in held.wrong():
        wrong_at(path)
    elif asked.unit_kind and (other := echo(value, asked.unit_kind)):
        st.caption(labels.plain(other))
    elif hint and value is None and asked.text:
        st.caption(labels.plain(asked.text))


def show_faults(problems: Iterable[Problem]) -> None:
    """Have what is wrong shown at each question that is asked from now on in this run."""
    held.show_wrong(faults(problems))


def wrong_at(*places: str) -> None:
    """Show what is wrong at places."""
    for place in places:
        for text in held.wrong().get(place, ()):
            st.markdown(f":red[{labels.plain(text)}]")


def _widget(
    path: str,
    asked: Question,
    value: Any,  # noqa: ANN401
    label: str,
    *,
    choices: Choices | None,
    rows: bool,
) -> None:
    """Show the widget of one question."""
    kind = "choice" if choices is not None and asked.kind == "text" else asked.kind
    place = without_rows(path)
    known = choices or {answer: labels.words(answer, place) for answer in asked.answers}
    shown = asked.default if value is None and kind in _HAVE_DEFAULTS else value
    key = held.widget(path, _as_shown(kind, shown, known))
    back: Any = {"key": key, "on_change": _keep, "args": (key, path, kind)}
    match kind:
        case "choice" if rows:
            st.radio(
                label, known, index=None, horizontal=True, format_func=known.__getitem__, **back
            )
        case "choice":
            st.selectbox(
                label, known, index=None, format_func=known.__getitem__, placeholder="",
                required=asked.needed or asked.default is not None, **back,
            )  # fmt: skip
        case "many" if known:
            st.multiselect(label, known, format_func=known.__getitem__, placeholder="", **back)
        case "tick":
            st.checkbox(label, **back)
        case "count":
            st.number_input(label, 1, 100_000, value=None, step=1, **back)
        case "number":
            st.number_input(label, 0.0, 1e7, value=None, format="%g", **back)
        case _:
            st.text_input(label, max_chars=MOST_LETTERS, **back)


def _as_shown(kind: str, value: Any, known: Choices) -> Any:  # noqa: ANN401
    """Return an answer as the widget of its kind holds it."""
    match kind:
        case "many" if known:
            return [answer for answer in value or () if answer in known]
        case "tick":
            return bool(value)
        case "number":
            return None if value is None else float(value)
        case "choice":
            return value if value in known else None
        case "count":
            return value
        case _:
            return _as_text(value)


def _as_text(value: object) -> str:
    """Return an answer as it would be typed."""
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return ", ".join(map(str, value))
    return f"{value:.12g}" if isinstance(value, float) else str(value)


def _keep(key: str, path: str, kind: str) -> None:
    """Keep what was answered; a bare number stands for itself, an unticked box for nothing."""
    if not held.shows(key) or not drafts.is_asked(session.here().draft, path):
        return
    value = held.value_of(key)
    if kind == "quantity":
        value = _bare_number(value.strip())
    elif kind == "many":
        value = _several(value, question(path))
    elif kind == "tick":
        value = value or None
    session.keep(path, value)


def _several(value: str | list[Any], asked: Question | None) -> list[Any] | None:
    """Return several answers; none at all is an answer only where the question has one."""
    given = value.split(",") if isinstance(value, str) else value
    names = [name.strip() if isinstance(name, str) else name for name in given]
    kept = [name for name in names if name != ""]
    return kept if kept or asked is None or asked.default is not None else None


def _bare_number(text: str) -> str | float:
    """Return a text, or the number it is when it has no unit."""
    try:
        number = float(text)
    except ValueError:
        return text
    return number if math.isfinite(number) else text


def decide(label: str, answers: Mapping[str, str], now: str, name: str, on: Any) -> None:  # noqa: ANN401
    """Ask what decides which questions follow; it is no answer of the requirement itself.

    Parameters
    ----------
    label : str
        The question.
    answers : mapping
        Words by answer.
    now : str
        The answer as the draft has it.
    name : str
        Of the widget.
    on : callable
        Called with the answer, to change the draft.
    """
    key = held.widget(name, now)

    def changed() -> None:
        if held.shows(key):
            session.change(lambda draft: on(draft, held.value_of(key)), refill=False)

    st.radio(
        label, answers, index=None, horizontal=True, key=key, on_change=changed,
        format_func=answers.__getitem__,
    )  # fmt: skip
