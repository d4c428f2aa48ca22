"""Sheets for who works in inches and °F: those first, the metric figure beside."""

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from selector.handover.drawing.look import MM_PER_INCH, shown_inches
from selector.handover.drawing.marks import Marks
from selector.requirement.part import Part

# Sizes in inches are whole 64ths or whole thousandths; of sizes in mm hardly one is. [1/inch]
GRIDS, NEAR = (64.0, 1000.0), 1e-4
# A heat from here up is said to the five degrees, as it is in °C. [°F]
ROUNDED_FROM_F = 200.0

_NUMBER = r"\d+(?:\.\d+)?"
# A range or a product, or the places of shoulders; a number in a name, as in 16MnCr5, is none.
_LIST = (
    rf"(?:(?<=at ){_NUMBER}(?:, {_NUMBER})* and {_NUMBER}"
    rf"|(?<![\w.])[-−]?{_NUMBER}(?:(?: to |–| × ){_NUMBER})*)"
)
_DEGREES = re.compile(
    rf"(?P<by>\bwithin |\bby )?(?P<said>{_LIST}) °C(?P<off> more| short| too)?"
)
_LENGTH = re.compile(
    rf"(?P<said>Ø{_NUMBER}(?: × {_NUMBER})*|(?<=\bR){_NUMBER}|{_LIST}) (?P<unit>mm|µm)\b"
)
_TORQUE = re.compile(rf"(?P<said>{_NUMBER}) N m\b")
NM_PER_LB_FT = 1.3558
_BARE = re.compile(rf"(?<![\w.])(?P<what>[RØ])(?P<size>{_NUMBER})(?! ?(?:mm|×|µm|[\d.]))")
_PLACE = re.compile(rf"(?P<what>hard to|soft from|water line) (?P<size>{_NUMBER})$")
# What of a card is the user's own, or is drawn in inches already.
_OWN = frozenset(
    {"title", "author", "foot", "svg", "name", "print", "harm", "kept", "size", "features"}
)


def in_inches(part: Part) -> bool:
    """Return whether the sizes of a part were given in inches.

    Parameters
    ----------
    part : Part
        Its sections.

    Returns
    -------
    bool
        True where most sizes and lengths are whole 64ths or thousandths of an inch.
    """
    sizes = [v for s in part.section for v in (s.size, s.length, s.width, s.bore) if v]
    return sum(_is_inch(size) for size in sizes) > 0.5 * len(sizes)


def _is_inch(size_mm: float) -> bool:
    """Return whether a length is a whole number of 64ths or thousandths of an inch."""
    return any(abs(n - round(n)) < NEAR for n in (size_mm / MM_PER_INCH * g for g in GRIDS))


def imperial(text: str) -> str:
    """Return a printed text with inches and °F before each metric figure.

    Parameters
    ----------
    text : str
        As the procedure has it, every length in mm, heat in °C and torque in N m.

    Returns
    -------
    str
        For instance "1545 °F / 840 °C" of "840 °C".

    Examples
    --------
    >>> imperial("Heat to 840 °C, 25 mm past, R2")
    'Heat to 1545 °F / 840 °C, 0.984 in / 25 mm past, R0.079 in / 2 mm'
    >>> imperial("holds within 10 °C")
    'holds within 18 °F / 10 °C'
    """
    text = _BARE.sub(lambda m: f"{m['what']}{m['size']} mm", text)
    text = _LENGTH.sub(_length, _DEGREES.sub(_degrees, text))
    return _TORQUE.sub(lambda m: f"{float(m['said']) / NM_PER_LB_FT:.3g} lb ft / {m[0]}", text)


def _degrees(match: re.Match[str]) -> str:
    """Return heats, or a difference of heats, in both units."""
    by, off = match["by"] or "", match["off"] or ""
    differs = bool(by or off)

    def one(number: re.Match[str]) -> str:
        value = float(number[0].replace("−", "-")) * 1.8 + (0.0 if differs else 32.0)
        fine = differs or abs(value) < ROUNDED_FROM_F
        return f"{value:.0f}" if fine else f"{5 * round(value / 5):.0f}"

    return f"{by}{re.sub(rf'[-−]?{_NUMBER}', one, match['said'])} °F / {match['said']} °C{off}"


def _length(match: re.Match[str]) -> str:
    """Return lengths in both units."""
    per = 0.001 if match["unit"] == "µm" else 1.0
    said = re.sub(_NUMBER, lambda number: shown_inches(per * float(number[0])), match["said"])
    return f"{said} in / {match[0]}"


def imperial_marks(marks: Marks) -> Marks:
    """Return what is written on a drawing, in inches and °F first."""
    notes = tuple(replace(n, words=_PLACE.sub(_place, n.words)) for n in marks.notes)
    heat = _first_only(imperial(marks.heat_words)) if marks.heat_words else marks.heat_words
    return replace(
        marks,
        notes=notes,
        heat_words=heat,
        said=tuple(_first_only(imperial(text)) for text in marks.said),
        bands=tuple(replace(b, words=_first_only(imperial(b.words))) for b in marks.bands),
    )


def _place(match: re.Match[str]) -> str:
    """Return a place along a part in inches."""
    return f"{match['what']} {shown_inches(float(match['size']))}"


def _first_only(text: str) -> str:
    """Return a text without the metric figures beside: a drawing has no room for both."""
    return re.sub(rf" / (?:Ø{_NUMBER}|{_LIST}) (?:mm|°C)", "", text)


def imperial_card(data: Mapping[str, Any]) -> dict[str, Any]:
    """Return the data of a card with inches and °F first in all that is not the user's own.

    Parameters
    ----------
    data : mapping
        As `card` made it.

    Returns
    -------
    dict
        The same, the large figure of a step in inches or °F and the metric one under it.
    """
    return {key: _said(key, value) for key, value in data.items()}


def _said(key: str, value: object) -> object:
    """Return a value of a card with its texts converted, by its key."""
    if key in _OWN:
        return value
    if isinstance(value, str):
        return imperial(value)
    if isinstance(value, Mapping):
        made = {name: _said(name, one) for name, one in value.items()}
        if "big" in made:
            big, _, metric = str(made["big"]).partition(" / ")
            made["big"] = big
            made["small"] = ", ".join(text for text in (metric, str(made["small"])) if text)
        return made
    if isinstance(value, list):
        return [_said(key, one) for one in value]
    return value
