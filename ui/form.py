"""The form: one widget a question, each with what is wrong with its answer beneath it."""

import math
from collections.abc import Collection, Iterable, Mapping
from typing import Any

import streamlit as st

from catalog import Catalog
from selector.errors import Problem
from ui import draft as drafts
from ui import labels, session
from ui.draft import Choices, Draft
from ui.field import BLOCKS, FIELDS, Block, Field

Messages = Mapping[str, list[str]]


def choices(draft: Draft, catalog: Catalog) -> Choices:
    """Return what can be chosen where that depends on the catalogue or on the form itself.

    Parameters
    ----------
    draft : dict
        The form.
    catalog : Catalog
        What is known.

    Returns
    -------
    mapping
        Words by answer, by field.
    """
    return {
        "workshop.heat.source": {k: s.name for k, s in catalog.heat_sources.items()},
        "workshop.bath.medium": {k: m.name for k, m in catalog.media.items()},
        "zone.section": {
            number: f"{number} {_section_name(section)}".strip()
            for number, section in enumerate(drafts.rows(draft, "part.section"), start=1)
        },
    }


def _section_name(section: Draft) -> str:
    """Return a section in words: what it is called, else its shape and size."""
    return str(section.get("name") or f"{section.get('shape', '')} {section.get('size', '')}")


def place_name(path: str) -> str:
    """Return a place on the form in words: "Section 2, size"."""
    kind = drafts.kind_of(path)
    job = [b for b in BLOCKS if b.path and f"{kind}.".startswith(f"{b.path}.")]
    block = max(job, key=lambda b: len(b.path), default=None)
    number = next((key for key in path.split(".") if key.isdigit()), "")
    row = f"{block.row} {number}" if block and number else ""
    if kind in FIELDS:
        label = FIELDS[kind].label
        return f"{row}, {labels.lower(label)}" if row else label
    return row or (block.title if block else path)


def sentence(problem: Problem) -> str:
    """Return a problem in a sentence, with the name its field has on the form."""
    where = labels.plain(place_name(problem.field))
    if problem.got == "nothing":
        return f"Please answer: {where}"
    return (
        f"{where}: must be {labels.plain(problem.rule)}; got {labels.plain(problem.got)}. "
        f"{labels.plain(problem.next_step)}"
    )


def messages(problems: Iterable[Problem]) -> dict[str, list[str]]:
    """Return what is wrong, by the place where it is shown.

    Parameters
    ----------
    problems : iterable of Problem
        Broken rules.

    Returns
    -------
    dict
        Sentences by place; those without a place under the empty text.
    """
    by_place: dict[str, list[str]] = {}
    for problem in problems:
        by_place.setdefault(drafts.place_of(problem), []).append(sentence(problem))
    return by_place


def summary(problems: Collection[Problem]) -> str:
    """Return in one line how many answers need attention, and which come first."""
    if not problems:
        return ""
    names = list(dict.fromkeys(place_name(problem.field) for problem in problems))
    listed = "; ".join(names[:3]) + ("; …" if len(names) > 3 else "")
    return labels.plain(f"To be looked at ({len(names)}): {listed}")


def show(block: Block, draft: Draft, offered: Choices, wrong: Messages) -> None:
    """Show a block of questions with what is wrong beneath each answer.

    Parameters
    ----------
    block : Block
        What is asked.
    draft : dict
        The form.
    offered : mapping
        What can be chosen, by field.
    wrong : mapping
        What is wrong, by place.
    """
    with st.container(border=True):
        st.subheader(block.title)
        _faults(wrong, block.path)
        if not block.row:
            _lines(block, block.path, draft, offered, wrong)
            return
        for number in range(1, len(drafts.rows(draft, block.path)) + 1):
            path = f"{block.path}.{number}"
            with st.container(
                horizontal=True, horizontal_alignment="distribute", vertical_alignment="bottom"
            ):
                st.markdown(f"**{block.row} {number}**", width="content")
                st.button(
                    f"Remove {block.row.lower()} {number}",
                    key=f"drop/{path}",
                    type="tertiary",
                    on_click=_drop,
                    args=(block.path, number),
                )
            _faults(wrong, path)
            _lines(block, path, draft, offered, wrong)
        st.button(
            f"Add {block.row.lower()}",
            key=f"add/{block.path}",
            on_click=_add,
            args=(block.path,),
        )


def _faults(wrong: Messages, path: str) -> None:
    """Write what is wrong at a place."""
    for text in wrong.get(path, ()) if path else ():
        st.error(text)


def _lines(block: Block, path: str, draft: Draft, offered: Choices, wrong: Messages) -> None:
    """Show the questions of one row; what is wrong stands right under its line."""
    for line in block.lines:
        places = [f"{path}.{field.name}" if path else field.name for field in line]
        columns = st.columns(len(line))
        for column, field, place in zip(columns, line, places, strict=True):
            with column:
                _widget(field, place, draft, offered)
        for place in places:
            _faults(wrong, place)


def _widget(field: Field, path: str, draft: Draft, offered: Choices) -> None:
    """Show one question, filled from the draft and writing back to it."""
    kept = drafts.read(draft, path)
    value = field.start if kept is None else kept
    label = f"{field.label} *" if field.needed else field.label
    kind = drafts.kind_of(path)
    known = offered.get(kind) or {c: labels.words(c, kind) for c in field.choices}
    key = session.widget(path, _as_shown(field, value))
    back: dict[str, Any] = {"key": key, "on_change": _keep, "args": (key, path, field)}
    hint = field.hint or None
    match field.kind:
        case "choice" if path == "safety_use":
            st.radio(
                label,
                known,
                index=None,
                horizontal=True,
                format_func=known.__getitem__,
                **back,
            )
        case "choice":
            st.selectbox(label, known, index=None, format_func=known.__getitem__, **back)
        case "many":
            st.multiselect(label, known, format_func=known.__getitem__, **back)
        case "tick":
            st.checkbox(label, **back)
        case "count":
            st.number_input(label, 1, 100_000, value=None, step=1, **back)
        case "number":
            st.number_input(label, 0.0, 1e7, value=None, format="%g", **back)
        case _:
            st.text_input(label, placeholder=hint, **back)


def _as_shown(field: Field, value: Any) -> Any:  # noqa: ANN401
    """Return an answer as the widget of its kind holds it."""
    match field.kind:
        case "many":
            return list(value or ())
        case "tick":
            return bool(value)
        case "number":
            return None if value is None else float(value)
        case "choice" | "count":
            return value
        case _:
            return _as_text(value)


def _as_text(value: object) -> str:
    """Return an answer as it would be typed."""
    if value is None:
        return ""
    return f"{value:.12g}" if isinstance(value, float) else str(value)


def _keep(key: str, path: str, field: Field) -> None:
    """Keep what was answered; a bare number stands for itself, an unticked box for nothing."""
    if not session.shows(key):
        return
    value = session.held(key)
    if field.kind == "quantity":
        value = _bare_number(value.strip())
    session.keep(path, value if field.kind != "tick" else value or None)


def _bare_number(text: str) -> str | float:
    """Return a text, or the number it is when it has no unit."""
    try:
        number = float(text)
    except ValueError:
        return text
    return number if math.isfinite(number) else text


def _add(path: str) -> None:
    """Add an empty row."""
    drafts.rows(session.draft(), path).append({})
    session.rows_changed()


def _drop(path: str, number: int) -> None:
    """Remove a row."""
    drafts.drop_row(session.draft(), path, number)
    session.rows_changed()
