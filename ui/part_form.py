"""The dozen questions that decide, and rows of others."""

from collections.abc import Callable, Container
from typing import Any

import streamlit as st

from catalog import Catalog
from selector.requirement.question import question
from selector.requirement.whole import CRITICAL_USES
from selector.requirement.workshop import Analysis
from ui import draft as drafts
from ui import form, labels, session
from ui.draft import Draft
from ui.form import ask

_REFERRED = (
    "**Lives depend on it: it is passed on to qualified people.** You are told which certified "
    "bar would fit and whom to ask; no treatment is offered."
)
_WIDTHS = {"name": 124, "shape": 124}


def head(number: int, title: str) -> None:
    """Show the head of one question."""
    st.header(f"{number}\u2002{title}", anchor=False)


def what_it_is() -> None:
    """Ask what happens if it breaks, what it is and how many."""
    with st.container(key="q/safety"):
        ask("safety_use", rows=True)
    st.markdown(_REFERRED if is_referred(session.here().draft) else "")
    with st.container(horizontal=True, key="q/name"):
        ask("part.name", width=420)
        ask("part.quantity", width=110)


def is_referred(draft: Draft) -> bool:
    """Return whether lives depend on a part, so that it is passed on."""
    return drafts.read(draft, "safety_use") in CRITICAL_USES


def sections() -> None:
    """Ask for the sections, each with its duty."""
    draft = session.here().draft
    count = len(drafts.rows(draft, "part.section"))
    form.wrong_at("part.section", "zone")
    for number in range(1, count + 1):
        with st.container(border=True, key=f"section/{number}"):
            _section(number, draft, alone=count == 1)
            _duty(number, draft)
    st.button("Add a section", key="add/part.section", on_click=_add, args=("part.section",))


def _section(number: int, draft: Draft, *, alone: bool) -> None:
    """Ask for the shape and size of one section."""
    path = f"part.section.{number}"
    given = drafts.read(draft, path) or {}
    with st.container(horizontal=True, vertical_alignment="top", key=f"sizes/{number}"):
        asked = ["name", "shape", "size", "length"]
        asked += ["width"] if given.get("shape") == "flat" or "width" in given else []
        asked += ["bore"] if is_bored(draft, path) else []
        for field in asked:
            ask(f"{path}.{field}", width=_WIDTHS.get(field, 100), hint=False)
        if not alone:
            st.button(
                f"Remove section {number}", key=f"drop/{path}", type="tertiary",
                on_click=_drop, args=("part.section", number),
            )  # fmt: skip
    if number == 1:
        form.hints(f"{path}.{field}" for field in asked)
    form.wrong_at(path)


def is_bored(draft: Draft, path: str) -> bool:
    """Return whether a section is asked for its bore in its own line."""
    given = drafts.read(draft, path) or {}
    return given.get("shape") == "tube" or "bore" in given


def _duty(section: int, draft: Draft) -> None:
    """Ask what a section suffers, how hard it must be and what it runs against."""
    zone = drafts.zone_of(draft, section)
    if zone is None:
        st.button(
            f"Section {section} has a duty of its own", key=f"lay/{section}", type="tertiary",
            on_click=session.change, args=(lambda d: drafts.with_zone(d, section),),
        )  # fmt: skip
        return
    path = f"zone.{zone}"
    lies_on = drafts.read(draft, f"{path}.section") or []
    if section != min(lies_on):
        st.caption(f"One duty with section {min(lies_on)}.")
        return
    with st.container(horizontal=True, key=f"duty/{section}"):
        ask(f"{path}.wear", width=228)
        if drafts.read(draft, f"{path}.wear") not in {None, "none"}:
            ask(f"{path}.severity", width=228, rows=True)
    form.wrong_at(path)
    _hardness(path, draft)
    _mate(path, draft)


def _hardness(path: str, draft: Draft) -> None:
    """Ask how hard a zone must be, or have it worked out."""
    known = any(
        drafts.read(draft, f"{path}.{name}") is not None for name in ("hardness", "depth")
    )
    asked = question(f"{path}.hardness")
    if drafts.read(draft, f"{path}.wear") in {None, "none"} and not known:
        return
    with st.container(horizontal=True, key=f"hardness/{path}"):
        form.decide(
            asked.title if asked else "",
            {"no": "Work it out", "yes": "I know it"},
            "yes" if known else "no",
            f"{path}.knows",
            lambda d, answer: _know(d, path, answer == "yes"),
        )
        if known:
            ask(f"{path}.hardness.min", width=110)
            ask(f"{path}.hardness.max", width=110)
            ask(f"{path}.depth", width=150, hint=False)
    if known:
        form.hints([f"{path}.depth"])
    form.wrong_at(f"{path}.hardness")


def _know(draft: Draft, path: str, known: bool) -> None:
    """Begin or drop a stated hardness and depth."""
    drafts.put(draft, f"{path}.hardness", {} if known else None)
    if not known:
        drafts.put(draft, f"{path}.depth", None)


def _mate(path: str, draft: Draft) -> None:
    """Ask what a zone runs against; without a mate nothing of one is kept."""
    there = drafts.read(draft, f"{path}.mate") is not None
    asked = question(f"{path}.mate")
    if drafts.read(draft, f"{path}.wear") in {None, "none"} and not there:
        return
    with st.container(horizontal=True, key=f"mate/{path}"):
        form.decide(
            asked.title if asked else "",
            {"no": "No", "yes": "Yes"},
            "yes" if there else "no",
            f"{path}.mates",
            lambda d, answer: drafts.put(d, f"{path}.mate", {} if answer == "yes" else None),
        )
        if there:
            ask(f"{path}.mate.material", width=200, hint=False)
            ask(f"{path}.mate.hardness", width=110, hint=False)
            ask(f"{path}.mate.should_wear", width=150)
    if there:
        form.hints(f"{path}.mate.{field}" for field in ("material", "hardness"))


def load_and_limits(currency: str) -> None:
    """Ask what it carries and what it must keep to."""
    with st.container(horizontal=True, key="q/load"):
        ask("load.torque", width=130)
        ask("load.impact", rows=True, width=236)
        ask("load.cycles", rows=True, width=300)
    with st.container(horizontal=True, key="q/limit"):
        ask("limit.runout", width=150)
        ask("limit.budget", width=190, label=f"A good part may cost, {currency}")
        ask("load.failure_cost", width=190, label=f"A failure in use costs, {currency}")


def priorities() -> None:
    """Ask what matters most, where it is not given by points or an order."""
    given = drafts.read(session.here().draft, "priorities") or {}
    if "points" in given or "order" in given:
        st.caption("What matters is given by your own weights.")
        return
    ask("priorities.preset", rows=True)


def table(
    path: str,
    widths: dict[str, int],
    choices: dict[str, Any] | None = None,
    idle: Callable[[Draft], Container[str]] = lambda _: (),
) -> None:
    """Ask for the rows of a block, each of which can be removed.

    Parameters
    ----------
    path : str
        The block, for instance "workshop.bath".
    widths : dict
        Of each question of a row, in pixels.
    choices : dict, optional
        What can be chosen, by question, where the requirement does not say.
    idle : callable
        Questions that are nothing to a row, asked only where they have an answer.
    """
    asked = question(path)
    name = asked.title if asked else path
    form.wrong_at(path)
    for number, row in enumerate(drafts.rows(session.here().draft, path), start=1):
        out = idle(row)
        with st.container(
            horizontal=True, vertical_alignment="top", key=f"row/{path}/{number}"
        ):
            for field, width in widths.items():
                if field in out and field not in row:
                    continue
                given = (choices or {}).get(field)
                ask(f"{path}.{number}.{field}", width=width, choices=given, hint=number == 1)
            st.button(
                f"Remove {number}", key=f"drop/{path}.{number}", type="tertiary",
                on_click=_drop, args=(path, number),
            )  # fmt: skip
    st.button(f"Add to {labels.lower(name)}", key=f"add/{path}", on_click=_add, args=(path,))


def analyses() -> None:
    """Ask for the analysis of each bar of the rack that has a certificate."""
    for number, bar in enumerate(drafts.rows(session.here().draft, "workshop.stock"), start=1):
        if bar.get("evidence") != "certificate" and "analysis" not in bar:
            continue
        path = f"workshop.stock.{number}.analysis"
        asked = question(path)
        st.markdown(
            f"**{labels.plain(str(bar.get('steel') or f'Bar {number}'))}**: "
            f"{labels.lower(asked.title)}, {labels.lower(asked.text)}"
            if asked
            else ""
        )
        with st.container(horizontal=True, key=f"analysis/{number}"):
            for element in Analysis.model_fields:
                ask(f"{path}.{element}", width=76)


def _add(path: str) -> None:
    """Add an empty row; a section starts round, which most are."""
    first = {"shape": "round"} if path == "part.section" else {}
    session.change(lambda draft: drafts.rows(draft, path).append(first))


def _drop(path: str, number: int) -> None:
    """Remove a row."""
    session.change(lambda draft: drafts.drop_row(draft, path, number))


def idle_of_heat(row: Draft, catalog: Catalog) -> frozenset[str]:
    """Return what is not asked of a heat source: gas of an oven, a chamber of a torch."""
    source = catalog.heat_sources.get(row.get("source", ""))
    if source is None:
        return frozenset({"gas_flow", "tip", "chamber", "ceiling"})
    return frozenset({"chamber"} if source.kind == "flame" else {"gas_flow", "tip"})


def bench_choices(catalog: Catalog) -> dict[str, dict[str, str]]:
    """Return what heat sources and baths are called, by question."""
    return {
        "source": {slug: source.name for slug, source in catalog.heat_sources.items()},
        "medium": {slug: medium.name for slug, medium in catalog.media.items()},
    }
