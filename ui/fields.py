"""What the form asks, where and when; words, kinds and answers are the models' own."""

from collections.abc import Callable, Mapping
from typing import Any, Literal

from selector.requirement.question import question, without_rows
from selector.requirement.workshop import Analysis
from ui import cached, labels
from ui.draft import OVER, Draft, called, read
from ui.meanwhile import HOW_BADLY

Line = tuple[str, ...]
_ANALYSIS = tuple(f"analysis.{element}" for element in Analysis.model_fields)
WHAT = (("safety_use",), ("part.name", "part.quantity"))
ZONE = (
    ("wear", "severity"),
    ("hardness.min", "hardness.max", "depth"),
    ("mate.material", "mate.hardness", "mate.should_wear"),
)
LOADS = (
    ("load.torque", "load.impact", "load.cycles"),
    ("limit.runout", "limit.budget", "load.failure_cost"),
)
SELDOM = (
    ("load.bending", "load.axial", "load.contact", "load.impact_energy"),
    OVER,
    ("limit.service_temperature", "limit.corrosion", "limit.days"),
    ("part.condition", "part.shape_class", "part.stock_removal"),
    ("part.finish_after",),
)
JUDGED = (
    ("workshop.measure", "workshop.check"),
    ("workshop.light", "workshop.held_by", "workshop.protect", "workshop.machine"),
    ("workshop.turns_part", "workshop.subcontract", "workshop.only_stock"),
)  # fmt: skip
SKILL = ("workshop.skill.bias", "workshop.skill.scatter", "workshop.skill.delay")
# Of each block what one of its rows is called, and the lines of a row.
ROWS: dict[str, tuple[str, tuple[Line, ...]]] = {
    "part.section": ("section", (("name", "shape", "size", "length", "width", "bore"),)),
    "part.feature": ("hole, notch or edge", (("kind", "at", "size"),)),
    "workshop.heat": ("source", (("source", "ceiling", "gas_flow", "tip", "chamber"),)),
    "workshop.bath": ("bath", (("medium", "volume", "temperature", "agitation"),)),
    "workshop.temper": ("means of tempering", (("means", "ceiling"),)),
    "workshop.stock": (
        "bar", (("steel", "condition", "size", "evidence", "hardness"), _ANALYSIS)
    ),
    "workshop.price": ("price", (("steel", "per_kg"),)),
}  # fmt: skip
# How wide a widget is by its kind, and where it is otherwise. [px]
_BY_KIND = {
    "quantity": 120, "count": 110, "number": 190, "choice": 200, "many": 420, "tick": 300,
    "text": 260,
}  # fmt: skip
_WIDTHS = {
    "part.name": 420, "part.section.name": 124, "part.section.shape": 124,
    **dict.fromkeys((f"part.section.{of}" for of in ("size", "length", "width", "bore")), 88),
    **dict.fromkeys(("part.feature.at", "part.stock_removal", "zone.depth"), 170),
    "workshop.heat.source": 330, "workshop.stock.condition": 160,
    **dict.fromkeys((f"workshop.stock.{element}" for element in _ANALYSIS), 76),
}  # fmt: skip
_MONEY = frozenset(
    {"limit.budget", "load.failure_cost", "workshop.labour_per_h", "workshop.price.per_kg"}
)
_SIDE_BY_SIDE = frozenset(
    {"safety_use", "zone.severity", "load.impact", "load.cycles", "priorities.preset"}
)


def _wears(row: Draft) -> bool:
    """Return whether a zone suffers any wear."""
    return str(row.get("wear", "none")) != "none"


def _burns(row: Draft) -> bool:
    """Return whether a source of heat is a flame."""
    source = cached.catalog().heat_sources.get(row.get("source", ""))
    return source is not None and source.kind == "flame"


def _has_room(row: Draft) -> bool:
    """Return whether a source of heat has a chamber."""
    return row.get("source") in cached.catalog().heat_sources and not _burns(row)


# What is asked of some rows only: by its row, or by the whole form where it stands in none.
_WHEN: dict[str, Callable[[Draft], bool]] = {
    "part.section.width": lambda row: row.get("shape") == "flat",
    "part.section.bore": lambda row: row.get("shape") == "tube",
    "zone.hardness.must": lambda row: "hardness" in row,
    "zone.mate.hardness": lambda row: "mate" in row,
    "zone.mate.should_wear": lambda row: "mate" in row,
    "workshop.heat.chamber": _has_room,
    "workshop.heat.ceiling": lambda row: "source" in row,
    **dict.fromkeys(("workshop.heat.gas_flow", "workshop.heat.tip"), _burns),
    **dict.fromkeys((f"zone.{name}" for name in (ZONE[0][1], *ZONE[1], ZONE[2][0])), _wears),
    **dict.fromkeys(OVER, lambda draft: len(draft["part"]["section"]) > 1),
    **dict.fromkeys(
        (f"workshop.stock.{element}" for element in _ANALYSIS),
        lambda row: row.get("evidence") == "certificate",
    ),
}


def is_asked(draft: Draft, path: str) -> bool:
    """Return whether a question is asked: it matters to its row, or has an answer.

    Parameters
    ----------
    draft : dict
        The form.
    path : str
        The place.

    Returns
    -------
    bool
        False also of one whose answer comes in after it was closed.
    """
    when = _WHEN.get(without_rows(path))
    if when is None or read(draft, path) is not None:
        return True
    within = path.split(".")
    while within and not within[-1].isdigit():
        within.pop()
    return when((read(draft, ".".join(within)) or {}) if within else draft)


def width(path: str) -> int | Literal["content"]:
    """Return how wide the widget of a question is. [px]; as its answers are, side by side."""
    asked = question(path)
    usual = _BY_KIND[asked.kind] if asked else 0
    return "content" if is_side_by_side(path) else _WIDTHS.get(without_rows(path), usual)


def is_side_by_side(path: str) -> bool:
    """Return whether the answers to choose from stand side by side instead of in a list."""
    return without_rows(path) in _SIDE_BY_SIDE


def title(path: str) -> str:
    """Return what a question is called, with the currency where it asks for money."""
    asked, money = question(path), without_rows(path) in _MONEY
    return (asked.title if asked else path) + (
        f", {cached.catalog().prices.currency}" if money else ""
    )


def usual(path: str) -> Any:  # noqa: ANN401
    """Return what is shown of a question that nobody answered: what a blank one means.

    Parameters
    ----------
    path : str
        The place.

    Returns
    -------
    object
        None where the answer alone can decide, so that it is asked for.
    """
    asked = question(path)
    return None if asked is None or without_rows(path) == HOW_BADLY else asked.default


def choices(draft: Draft, path: str) -> Mapping[Any, str]:
    """Return what may be chosen, in words: from the models, the catalogue or the form itself.

    Parameters
    ----------
    draft : dict
        The form.
    path : str
        The place.

    Returns
    -------
    mapping
        Words by answer; empty where any text or number will do.
    """
    place, asked = without_rows(path), question(path)
    match place:
        case "workshop.heat.source":
            return {slug: found.name for slug, found in cached.catalog().heat_sources.items()}
        case "workshop.bath.medium":
            return {slug: found.name for slug, found in cached.catalog().media.items()}
        case "load.torque_over" | "load.bending_over":
            return called(draft)
        case _:
            return {one: labels.words(one, place) for one in (asked.answers if asked else ())}
