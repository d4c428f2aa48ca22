"""What a command is given as text: a temperature, a time, a hardness, a section, a name."""

import re
from typing import get_args

from pydantic import TypeAdapter

from catalog import Catalog
from catalog.medium import Medium
from catalog.steel import Steel
from selector.errors import Problem, RequirementError
from selector.hardness_scale import hrc_from_hv
from selector.requirement.part import Section
from selector.requirement.priority import CRITERIA, Preset, Priorities
from selector.requirement.quantity import DurationS, HardnessHv, TemperatureC, catalog_name
from selector.requirement.read import value_from

# What the sizes of a section are, in the order they are written.
_SIZES: dict[str, tuple[str, ...]] = {
    "round": ("size",),
    "square": ("size",),
    "hexagon": ("size",),
    "flat": ("size", "width"),
    "tube": ("size", "bore"),
}
_EXAMPLE = 'Write "round 30 mm", "flat 8 x 30 mm" or "tube 24 x 10 mm" (outside by bore).'
_BETWEEN = re.compile(r"\s*(?:x|×|\*|\bby\b)\s*")
_UNIT = re.compile(r"[^\d\s./\-].*$")
# A bar is long against its thickness, as far as a length may go. [mm]
_LONG, _LONGEST_MM = 10.0, 5000.0


def temperature_c(name: str, text: str) -> float:
    """Return a temperature given as text. [°C]."""
    return value_from(TypeAdapter(TemperatureC), text, name)


def duration_s(name: str, text: str) -> float:
    """Return a time given as text. [s]."""
    return value_from(TypeAdapter(DurationS), text, name)


def hardness_hrc(name: str, text: str) -> float:
    """Return a hardness given as text, on any scale; below 20 the C scale is carried on."""
    hv = value_from(TypeAdapter(HardnessHv), text, name)
    return float(hrc_from_hv(hv, outside="extend"))


def section(name: str, text: str) -> Section:
    """Return a long bar whose section is given as text.

    Parameters
    ----------
    name : str
        What the user calls it.
    text : str
        Shape and sizes: "round 30 mm", "flat 8 x 30 mm", "tube 1 in x 1/2 in".

    Returns
    -------
    Section
        A flat by its thickness, whichever side is named first.

    Raises
    ------
    RequirementError
        When it is no section; all faults are listed.
    """
    shape, _, rest = text.strip().partition(" ")
    names = _SIZES.get(shape.casefold())
    sizes = _sizes(rest)
    if names is None or len(sizes) != len(names):
        rule = "a shape (round, square, hexagon, flat, tube) with its sizes"
        raise RequirementError(Problem(name, rule, repr(text), _EXAMPLE))
    given = dict(zip(names, sizes, strict=True))
    bar = value_from(
        TypeAdapter(Section), {"shape": shape.casefold(), **given, "length": 1.0}, name
    )
    wide = max(bar.across_mm, bar.size)
    return bar.model_copy(
        update={
            "size": bar.narrowest_mm,
            "width": None if bar.width is None else wide,
            "length": min(_LONG * wide, _LONGEST_MM),
        }
    )


def _sizes(text: str) -> list[str]:
    """Return sizes each with its unit: one without takes that of the last."""
    sizes = _BETWEEN.split(text.strip())
    unit = _UNIT.search(sizes[-1])
    return [
        size if unit is None or _UNIT.search(size) else f"{size} {unit[0]}" for size in sizes
    ]


def steel(name: str, text: str, catalog: Catalog) -> Steel:
    """Return the one steel that carries a name.

    Parameters
    ----------
    name : str
        What the user calls the argument.
    text : str
        Any designation.
    catalog : Catalog
        What is known.

    Returns
    -------
    Steel
        The catalogue's.

    Raises
    ------
    RequirementError
        When no steel has this name, or several have.
    """
    found = catalog.look_up(text)
    if not found.steels:
        problem = Problem(name, "a known steel", repr(text), found.did_you_mean)
        raise RequirementError(problem)
    if len(found.steels) > 1:
        step = f"It may be {' or '.join(s.name for s in found.steels)}: say which."
        raise RequirementError(Problem(name, "the name of one steel", repr(text), step))
    return found.steels[0]


def medium(name: str, text: str, catalog: Catalog) -> Medium:
    """Return the bath of a name; blanks stand for the dashes of the catalogue.

    Parameters
    ----------
    name : str
        What the user calls the argument.
    text : str
        Name of a medium.
    catalog : Catalog
        What is known.

    Returns
    -------
    Medium
        The catalogue's.

    Raises
    ------
    RequirementError
        When there is no such bath.
    """
    slug = catalog_name(text)
    if slug not in catalog.media:
        step = f"Choose one of {', '.join(catalog.media)}."
        raise RequirementError(Problem(name, "a known bath", repr(text), step))
    return catalog.media[slug]


_WEIGHTS_RULE = "a preset, an order, points or comparisons of criteria"
_WEIGHTS_EXAMPLE = (
    'Write a preset ("wear"), an order ("hardness > cost > days"), points '
    '("hardness=40, cost=20") or comparisons ("hardness/cost=3, cost/days=2, '
    f'hardness/days=5"). Presets: {", ".join(get_args(Preset))}; criteria: '
    f"{', '.join(CRITERIA)}."
)


def priorities(name: str, text: str) -> Priorities:
    """Return what matters most, given as text.

    Parameters
    ----------
    name : str
        What the user calls it.
    text : str
        A preset, "hardness > cost > days", "hardness=40, cost=20" or "hardness/cost=3".

    Returns
    -------
    Priorities
        As the requirement file has them.

    Raises
    ------
    RequirementError
        When it is none of these; all faults are listed.
    """
    plain = text.strip().casefold()
    if plain in get_args(Preset):
        given: dict[str, object] = {"preset": plain}
    elif "=" in plain:
        named = dict(_weighed(name, part, text) for part in plain.split(","))
        given = {"pairwise" if any("/" in key for key in named) else "points": named}
    elif ">" in plain or _criterion(plain) in CRITERIA:
        given = {"order": [_criterion(part) for part in plain.split(">")]}
    else:
        raise RequirementError(Problem(name, _WEIGHTS_RULE, repr(text), _WEIGHTS_EXAMPLE))
    return value_from(TypeAdapter(Priorities), given, name)


def _weighed(name: str, part: str, text: str) -> tuple[str, str]:
    """Return one criterion or pair with its figure."""
    key, sign, figure = part.partition("=")
    if not (sign and key.strip() and figure.strip()):
        raise RequirementError(Problem(name, _WEIGHTS_RULE, repr(text), _WEIGHTS_EXAMPLE))
    return "/".join(_criterion(side) for side in key.split("/")), figure.strip()


def _criterion(text: str) -> str:
    """Return a criterion as the file names it: "snap margin" is snap_margin."""
    return re.sub(r"[\s-]+", "_", text.strip())
