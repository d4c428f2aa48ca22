"""The part at hand of one visitor's session, and how it changes.

The part at hand is in the address by its id and is kept in the user's folder at every change,
so that reload, back and a second tab find it. A tab that changes what another tab has changed
meanwhile goes on under an id of its own.
"""

import copy
import json
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any
from zlib import crc32

import streamlit as st

from selector.errors import Problem
from ui import store
from ui.draft import Draft, blank, differing, put, whole
from ui.fitting import fits
from ui.look import looked_up

_MOST_UNDONE, _MOST_NOTED = 60, 60
# What is kept of a part at hand, and as what; what was damaged meanwhile begins anew.
_KEPT: dict[str, type] = {
    "draft": dict, "shop": str, "tried": bool, "asked": dict, "revision": int, "aim": str,
    "noted": dict,
}  # fmt: skip


@dataclass(slots=True)
class Visit:
    """The part at hand; `fills` counts, by place, how often the form was filled anew there.

    It is part of a widget's key, so that a browser still showing what stood there before cannot
    answer for it. Every other widget stays, and what is being typed into it. `form` names the
    form as long as it is shown, `asked` what the last advice is of, `noted` what was chosen,
    ticked and written in the views of its answers.
    """

    id: str
    draft: Draft
    shop: str | None = None
    tried: bool = False
    asked: Draft | None = None
    revision: int = 0
    fills: Counter[str] = field(default_factory=Counter)
    form: str = field(default_factory=store.new_id)
    before: list[str] = field(default_factory=list)
    aim: str = "choice"
    noted: dict[str, Any] = field(default_factory=dict)
    parted: bool = False


def begin() -> None:
    """Take up the part that the address names; without one, the part at hand stays."""
    wanted = st.query_params.get("part", "")
    held = held_part()
    if held is not None and wanted in {"", held.id}:
        _show_address(held)
        return
    kept = store.part(wanted)
    if kept is not None and fits(kept.get("draft")):
        st.session_state["visit"] = _visit(wanted, kept)
    else:
        st.session_state.setdefault("visit", None)


def _visit(key: str, kept: dict[str, Any]) -> Visit:
    """Return a kept part as the part at hand, with its workshop as that is now."""
    sound = {
        name: kept[name] for name, kind in _KEPT.items() if isinstance(kept.get(name), kind)
    }
    visit = Visit(key, **sound)
    visit.asked = whole(visit.asked) if fits(visit.asked) and visit.asked else None
    visit.draft = whole(visit.draft)
    saved = workshops().get(visit.shop or "")
    if saved is None:
        visit.shop = None
    else:
        visit.draft["workshop"] = saved
    return visit


def workshops() -> dict[str, dict[str, Any]]:
    """Return the workshops by name that the form can hold, the one used last first."""
    kept = store.workshops().items()
    return {name: table for name, table in kept if fits({"workshop": table})}


def held_part() -> Visit | None:
    """Return the part at hand, if there is one."""
    visit: Visit | None = looked_up(lambda: st.session_state.get("visit"))
    return visit


def here() -> Visit:
    """Return the part at hand; a blank one where there is none yet."""
    return held_part() or start(blank())


def start(draft: Draft, *, tried: bool = False, aim: str = "choice") -> Visit:
    """Take up a new part, in the workshop used last where it names none.

    Parameters
    ----------
    draft : dict
        What is known of it.
    tried : bool
        Whether its faults are shown at once.
    aim : str
        The view that its answer is sought in.

    Returns
    -------
    Visit
        The part at hand from now on.
    """
    visit = Visit(store.new_id(), whole(draft), tried=tried, aim=aim)
    if not visit.draft["workshop"]["heat"]:
        visit.shop, table = next(iter(workshops().items()), (None, None))
        visit.draft["workshop"] = table or visit.draft["workshop"]
    st.session_state["visit"] = visit
    st.session_state["refused"] = ()
    _save(visit)
    return visit


def _save(visit: Visit) -> None:
    """Keep the part; under another id where another tab has changed it meanwhile."""
    revision = (store.part(visit.id) or {}).get("revision")
    if isinstance(revision, int) and revision > visit.revision:
        visit.id, visit.parted = store.new_id(), True
    visit.revision += 1
    store.keep_part(visit.id, {name: getattr(visit, name) for name in _KEPT})
    _show_address(visit)


def _show_address(visit: Visit) -> None:
    """Have the address name the part; where a newer answer waits, this ends the run at hand."""
    if looked_up(lambda: st.query_params.get("part")) != visit.id:
        st.query_params["part"] = visit.id


def mark(**kept: Any) -> None:  # noqa: ANN401
    """Keep what is known of the part at hand beside its answers, for instance `tried`."""
    visit = here()
    for name, value in kept.items():
        setattr(visit, name, value)
    _save(visit)


def parted() -> bool:
    """Return, once, whether this tab has gone on with a copy of its own."""
    visit = held_part()
    if visit is None or not visit.parted:
        return False
    visit.parted = False
    return True


def change(alter: Callable[[Draft], object], *, refill: bool = True) -> None:
    """Change the part at hand so that it can be undone, and keep it.

    Parameters
    ----------
    alter : callable
        Changes the draft it is given.
    refill : bool
        Whether the widgets of what it changes are to be filled anew.
    """
    visit = here()
    visit.before = [*visit.before, json.dumps([visit.draft, visit.shop])][-_MOST_UNDONE:]
    draft = copy.deepcopy(visit.draft)
    alter(draft)
    _turn(draft, visit.shop, refill=refill)


def _turn(draft: Draft, shop: str | None, *, refill: bool = True) -> None:
    """Have the part at hand be another draft, and keep the workshop that it names."""
    if shop is not None:
        store.keep_workshop(shop, draft["workshop"])
    visit = here()
    if refill:
        visit.fills.update(differing(visit.draft, draft))
        visit.fills.update(["shop"] if shop != visit.shop else [])
    mark(draft=draft, shop=shop)


def keep(path: str, value: Any) -> None:  # noqa: ANN401
    """Keep one answer of the part at hand."""
    change(lambda draft: put(draft, path, value), refill=False)


def note(name: str, value: Any) -> None:  # noqa: ANN401
    """Keep what was chosen, ticked or written in a view of a part; the longest ago goes."""
    visit = held_part()
    if visit is not None:
        others = {other: kept for other, kept in visit.noted.items() if other != name}
        mark(noted=dict([*others.items(), (name, value)][-_MOST_NOTED:]))


def undo() -> None:
    """Take back the last change."""
    visit = here()
    if visit.before:
        _turn(*json.loads(visit.before.pop()))


def use_workshop(name: str | None) -> None:
    """Put the part at hand into the workshop of a name; None leaves it as the part's own."""
    table = workshops().get(name or "")
    # The workshop of before stays as it is.
    here().shop = None
    if table is not None:
        change(lambda draft: draft.update(workshop=table))
    mark(shop=None if table is None else name)


def name_workshop(name: str) -> None:
    """Save the workshop of the part at hand under a name, and go on in it."""
    _turn(here().draft, name, refill=False)


def asked_mark() -> str:
    """Return a mark of what the advice that is shown is of: another part has another one."""
    return f"{crc32(json.dumps(here().asked, sort_keys=True, default=str).encode()):08x}"


def is_stale() -> bool:
    """Return whether the part was changed since its advice was computed."""
    return here().asked not in (None, here().draft)


def refuse(problems: Iterable[Problem]) -> None:
    """Keep why a file was not taken."""
    st.session_state["refused"] = tuple(problems)


def refused() -> tuple[Problem, ...]:
    """Return why the last file was not taken; empty when it was."""
    problems: tuple[Problem, ...] = st.session_state.get("refused", ())
    return problems
