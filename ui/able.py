"""What the workshop can do with the part at hand, route by route, beside the form."""

import re
from collections.abc import Iterable
from itertools import groupby

import streamlit as st

from selector.errors import SelectorError
from selector.job.reach import Able, Reach
from selector.wording import either, means_words
from ui import cached, piece
from ui.draft import Draft, read
from ui.labels import lower, upper
from ui.meanwhile import so_far

# A disc that is filled, half or struck through; the words beside it say the same.
_OPEN, _HARDLY, _SHUT = "●", "◐", "⊘"
# So many treatments stand in the open.
_FEW = 3
_ASIDE = re.compile(r" \(.*?\)| in the workshop")


def show(draft: Draft) -> None:
    """Show what the workshop of a part can do with it, as soon as both are known.

    Parameters
    ----------
    draft : dict
        The form.
    """
    requirement = so_far(draft) if read(draft, "workshop.heat") else None
    if requirement is None:
        return
    try:
        found = cached.able(requirement)
    except SelectorError:
        return
    with piece.panel("able"):
        st.header("What this workshop can do with it", anchor=False)
        piece.markup(table(found))


def table(found: Able) -> str:
    """Return what can be done as the lines of a table; what cannot comes last, by its reason.

    Parameters
    ----------
    found : Able
        Routes and tempers.

    Returns
    -------
    str
        HTML.
    """
    home = [r for r in found.routes if not r.barred and r.route.place == "workshop"]
    rows = [(_HARDLY if r.beyond else _OPEN, r.route.name, _baths(r)) for r in home]
    rows.sort(key=lambda row: row[0] != _OPEN)
    rows.append(_tempering(found))
    rows = [(disc, head, piece.e(text)) for disc, head, text in rows]
    if out := [r for r in found.routes if not r.barred and r.route.place != "workshop"]:
        rows.append((_OPEN, "Send out", _names(out)))
    shut = sorted((r for r in found.routes if r.barred), key=lambda r: r.barred)
    rows += [(_SHUT, why, _names(every)) for why, every in groupby(shut, lambda r: r.barred)]
    cells = "".join(
        f"<tr><td class='c-disc' aria-hidden='true'>{disc}</td>"
        f"<th scope='row'>{piece.e(upper(head))}</th><td>{html}</td></tr>"
        for disc, head, html in rows
    )
    return f"<table class='tw-lines tw-able'>{cells}</table>{_thick(home)}"


def _baths(reach: Reach) -> str:
    """Return in what a route is quenched here."""
    names = [medium.slug.replace("-", " ") for medium in reach.media]
    return f"in {either(names)}" if names else "and cool as it stands"


def _tempering(found: Able) -> tuple[str, str, str]:
    """Return by what is tempered, and up to how hot."""
    if not found.temper_c:
        return (_SHUT, "Temper", "there is nothing to temper by")
    said = (
        f"{means_words(means)} to {top:.0f}\N{NO-BREAK SPACE}°C"
        for means, top in found.temper_c.items()
    )
    return (_OPEN, "Temper", ", ".join(said))


def _thick(home: Iterable[Reach]) -> str:
    """Return that the part is thick for what there is to heat with."""
    said = dict.fromkeys(
        f"{_HARDLY} {upper(r.beyond.name)}: heats about {r.beyond.section_mm.value:.0f} mm "
        f"round evenly; this part heats like {r.thick_mm:.0f} mm."
        for r in home
        if r.beyond is not None
    )
    return "".join(f"<p class='tw-foot'>{piece.e(text)}</p>" for text in said)


def _names(reaches: Iterable[Reach]) -> str:
    """Return routes in one line; many of them behind a line that opens."""
    names = [_ASIDE.sub("", lower(reach.route.name)) for reach in reaches]
    html = piece.e(", ".join(name.removeprefix("send out ") for name in names))
    if len(names) <= _FEW:
        return html
    return f"<details><summary>{len(names)} treatments</summary>{html}</details>"
