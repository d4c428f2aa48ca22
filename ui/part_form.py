"""The questions on a part and its workshop, line by line."""

from collections.abc import Callable, Iterable

import streamlit as st

from selector.requirement.whole import CRITICAL_USES
from ui import draft as drafts
from ui import fields, form, held, labels, session
from ui.draft import Draft

_REFERRED = (
    "**Lives depend on it: it is passed on to qualified people.** You are told which certified "
    "bar would fit and whom to ask; no treatment is offered."
)


def head(number: int, title: str) -> None:
    """Show the head of one question."""
    st.header(f"{number}\u2002{title}", anchor=False)


def lines(of: Iterable[fields.Line], under: str = "") -> None:
    """Ask lines of questions.

    Parameters
    ----------
    of : iterable of tuple
        Places, a tuple a line.
    under : str
        What they stand in, for instance "zone.1".
    """
    for line in of:
        form.line(*(f"{under}.{path}".strip(".") for path in line))


def what_it_is() -> None:
    """Ask what happens if it breaks, what it is and how many."""
    lines(fields.WHAT[:1])
    st.markdown(_REFERRED if is_referred(session.here().draft) else "")
    lines(fields.WHAT[1:])


def is_referred(draft: Draft) -> bool:
    """Return whether lives depend on a part, so that it is passed on."""
    return drafts.read(draft, "safety_use") in CRITICAL_USES


def table(path: str, after: Callable[[int], None] | None = None) -> None:
    """Ask for the rows of a block, each of which can be removed.

    Parameters
    ----------
    path : str
        The block, for instance "workshop.bath".
    after : callable, optional
        Asks what else belongs to a row, by its number; the last of such rows stays.
    """
    name, (first, *others) = fields.ROWS[path]
    form.wrong_at(path)
    count = len(drafts.read(session.here().draft, path) or ())
    for number in range(1, count + 1):
        row = f"{path}.{number}"
        with st.container(border=after is not None, key=f"{path.rpartition('.')[2]}/{number}"):
            stays = after is not None and count == 1
            form.line(*(f"{row}.{field}" for field in first), drop="" if stays else row)
            lines(others, row)
            if after is not None:
                after(number)
    st.button(f"Add a {name}", key=f"add/{path}", on_click=_add, args=(path,))


def _add(path: str) -> None:
    """Add an empty row; a section starts round, which most are."""
    first = {"shape": "round"} if path == "part.section" else {}
    session.change(lambda draft: drafts.rows(draft, path).append(first))


def sections() -> None:
    """Ask for the sections, each with its duty."""
    form.wrong_at("zone")
    table("part.section", _duty)


def _duty(section: int) -> None:
    """Ask what a section suffers, how hard it must be and what it runs against."""
    zone = drafts.zone_of(session.here().draft, section)
    if zone is None:
        st.button(
            f"Section {section} has a duty of its own", key=f"lay/{section}", type="tertiary",
            on_click=session.change, args=(lambda d: d["zone"].append({"section": [section]}),),
        )  # fmt: skip
    elif section != (begins := _begins(zone)):
        st.caption(f"One duty with section {begins}.")
    else:
        lines(fields.ZONE, f"zone.{zone}")


def _begins(zone: int) -> int:
    """Return the first section that a zone lies on."""
    on: list[int] = session.here().draft["zone"][zone - 1]["section"]
    return min(on)


def priorities() -> None:
    """Ask what matters most, where it is not given by points or an order."""
    given = drafts.read(session.here().draft, "priorities") or {}
    if "points" in given or "order" in given:
        st.caption("What matters is given by your own weights.")
    else:
        form.line("priorities.preset")


def seldom() -> None:
    """Ask what seldom decides, each fold of it where it is open."""
    named = drafts.called(session.here().draft)
    rest = {number: _rest_of(number) for number in named}

    def of_sections() -> None:
        for number, name in named.items():
            st.markdown(f"**{labels.plain(name)}**")
            lines(rest[number])

    _folded("Holes, notches, edges", "features", (("part.feature",),),
            lambda: table("part.feature"))  # fmt: skip
    title = "More about loads, place of use, condition, finish"
    _folded(title, "rest", fields.SELDOM, lambda: lines(fields.SELDOM))
    every = [line for of_one in rest.values() for line in of_one]
    _folded("More about the sections", "sections", every, of_sections)


def _folded(
    title: str, name: str, places: Iterable[fields.Line], ask_them: Callable[[], None]
) -> None:
    """Show a fold; a fault in it opens the fold."""
    within = tuple(f"{path}." for line in places for path in line)
    wrong = any(f"{at}.".startswith(within) for at in held.wrong())
    key = held.filled(f"{session.here().id}/more/{name}", wrong)
    with st.expander(title, key=key, on_change="rerun") as fold:
        if fold.open:
            ask_them()


def _rest_of(section: int) -> list[fields.Line]:
    """Return what of a section, and of the zone that begins on it, is not asked in the open."""
    draft = session.here().draft
    path, zone = f"part.section.{section}", drafts.zone_of(draft, section)
    in_the_open = fields.is_asked(draft, f"{path}.bore")
    asked: list[fields.Line] = [
        (f"{path}.fillet",) if in_the_open else (f"{path}.fillet", f"{path}.bore")
    ]
    if zone is not None and section == _begins(zone):
        asked.append((f"zone.{zone}.life_ratio", f"zone.{zone}.hardness.must"))
    return asked
