"""What the form asks: one table of fields, in the order and the words of the page.

Closed sets of answers and first answers come from the requirement itself, so that the form
can never offer what the selector refuses.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel

from selector.requirement import Requirement
from selector.requirement.load import Limit, Load
from selector.requirement.part import Feature, Part, Section
from selector.requirement.priority import Priorities
from selector.requirement.workshop import Bath, Stock, TemperMeans, Workshop
from selector.requirement.zone import Mate, Zone

Kind = Literal["text", "quantity", "number", "count", "choice", "many", "tick"]
_WANTED: Mapping[Kind, tuple[str, tuple[type, ...]]] = {
    "text": ("a text", (str,)),
    "quantity": ("a number or a text with its unit", (str, int, float)),
    "number": ("a number", (int, float)),
    "count": ("a whole number", (int,)),
    "choice": ("one of the answers of the form", (str,)),
    "many": ("a list of answers of the form", (list, tuple)),
    "tick": ("true or false", (bool,)),
}


@dataclass(frozen=True, slots=True)
class Field:
    """One question: its place in its block, its words, and what answers it takes."""

    name: str
    label: str
    kind: Kind
    hint: str = ""
    choices: tuple[str, ...] = ()
    start: Any = None
    needed: bool = False

    @property
    def wanted(self) -> str:
        """What an answer must be, in words."""
        return _WANTED[self.kind][0]

    def holds(self, value: object, choices: Mapping[Any, str] | None = None) -> bool:
        """Return whether the field's widget can show a value.

        Parameters
        ----------
        value : object
            An answer from a file.
        choices : mapping, optional
            What can be chosen, where the field itself does not say.

        Returns
        -------
        bool
            Whether it can.
        """
        kinds = _WANTED[self.kind][1]
        if not isinstance(value, kinds) or (isinstance(value, bool) and bool not in kinds):
            return False
        if self.kind not in {"choice", "many"}:
            return True
        answers = [value] if isinstance(value, str) else list(value)  # type: ignore[call-overload]
        return all(answer in (choices or self.choices) for answer in answers)


@dataclass(frozen=True, slots=True)
class Block:
    """A group of questions, in lines; `row` names one row where there may be several."""

    path: str
    title: str
    lines: tuple[tuple[Field, ...], ...]
    row: str = ""

    @property
    def fields(self) -> tuple[Field, ...]:
        """All questions of the block."""
        return tuple(field for line in self.lines for field in line)


def _literals(annotation: Any) -> tuple[str, ...]:  # noqa: ANN401
    """Return the closed set of answers inside a type."""
    if get_origin(annotation) is Literal:
        return get_args(annotation)
    return tuple(word for inner in get_args(annotation) for word in _literals(inner))


def _closed(model: type[BaseModel], name: str, label: str, kind: Kind = "choice") -> Field:
    """Return the question of a field with a closed set of answers."""
    info = model.model_fields[name.rpartition(".")[2]]
    needed = info.is_required()
    start = None if needed else info.default
    choices = _literals(info.annotation)
    return Field(name, label, kind, choices=choices, start=start, needed=needed)


USE = Block(
    "",
    "Safety",
    ((_closed(Requirement, "safety_use", "If it breaks in use, what is at risk?"),),),
)
PART = Block(
    "part",
    "Part",
    (
        (
            Field("name", "Name", "text", "square driver, 12 mm", needed=True),
            Field("quantity", "How many", "count", start=1),
            _closed(Part, "condition", "Condition now"),
            _closed(Part, "shape_class", "Kind of shape"),
        ),
        (
            Field("stock_removal", "Taken off after hardening, per side", "quantity", "0.2 mm"),
            _closed(Part, "finish_after", "Finished after hardening by", "many"),
        ),
    ),
)
SECTION = Block(
    "part.section",
    "Sections, from the working end",
    (
        (
            Field("name", "Called", "text", "claws"),
            _closed(Section, "shape", "Shape"),
            Field("size", "Size", "quantity", "25 mm, 1/2 in", needed=True),
            Field("length", "Length", "quantity", "60 mm", needed=True),
            Field("bore", "Bore, if any", "quantity", "8 mm"),
            Field("width", "Width of a flat", "quantity", "40 mm"),
            Field("fillet", "Fillet at its end", "quantity", "1 mm"),
        ),
    ),
    row="Section",
)
FEATURE = Block(
    "part.feature",
    "Holes, notches, edges",
    (
        (
            _closed(Feature, "kind", "Kind"),
            Field("at", "From the working end", "quantity", "10 mm"),
            Field("size", "Size", "quantity", "4 mm"),
        ),
    ),
    row="Feature",
)
ZONE = Block(
    "zone",
    "Zones: what each stretch has to bear",
    (
        (
            Field("name", "Called", "text", "working edge"),
            Field("section", "Lies on section", "many", needed=True),
            _closed(Zone, "wear", "Wear"),
            _closed(Zone, "severity", "How severe"),
        ),
        (
            Field("hardness.min", "Least hardness", "quantity", "blank: derive it; 50 HRC"),
            Field("hardness.max", "Greatest hardness", "quantity", "56 HRC"),
            Field("depth", "Hard to a depth of", "quantity", "blank: derive it; 1 mm"),
            Field("hardness.must", "The window is a must, to its edges", "tick", start=False),
        ),
        (
            Field("mate.material", "Runs against", "text", "bronze bush"),
            Field("mate.hardness", "Hardness of that", "quantity", "180 HB"),
            _closed(Mate, "mate.should_wear", "Which should wear"),
            Field("life_ratio", "Life wanted, times the old part", "number"),
        ),
    ),
    row="Zone",
)
LOAD = Block(
    "load",
    "Loads",
    (
        (
            Field("torque", "Torque, with its unit", "quantity", "120 N m, 90 lb ft"),
            Field("bending", "Bending", "quantity", "40 N m"),
            Field("axial", "Pull or push along it", "quantity", "2000 N"),
            Field("contact", "Pressing on the zone", "quantity", "800 N, 180 lbf"),
        ),
        (
            _closed(Load, "impact", "Impact"),
            Field("impact_energy", "Energy of a blow", "quantity", "15 J"),
            _closed(Load, "cycles", "How often loaded"),
            Field("failure_cost", "Cost of a failure in service", "number"),
        ),
    ),
)
LIMIT = Block(
    "limit",
    "Limits",
    (
        (
            Field("runout", "Run-out or bow permitted", "quantity", "0.1 mm"),
            Field("service_temperature", "Service temperature", "quantity", "80 °C"),
            _closed(Limit, "corrosion", "Corrosion"),
        ),
        (
            Field("budget", "Budget for one good part", "number"),
            Field("currency", "Currency", "text", "EUR"),
            Field("days", "Needed within", "quantity", "5 days, 2 weeks"),
        ),
    ),
)
WORKSHOP = Block(
    "workshop",
    "Measuring, checking, help",
    (
        (
            _closed(Workshop, "measure", "Temperature is judged by", "many"),
            _closed(Workshop, "light", "Light when judging colour"),
            _closed(Workshop, "check", "Hardness is checked with", "many"),
            _closed(Workshop, "held_by", "Part is held by"),
            _closed(Workshop, "protect", "Work in the furnace is wrapped in", "many"),
        ),
        (
            Field("turns_part", "The part is turned while heated", "tick", start=False),
            Field("subcontract", "Work may be sent out to a firm", "tick", start=False),
            Field("only_stock", "Only bars in the rack may be used", "tick", start=False),
        ),
    ),
)
HEAT = Block(
    "workshop.heat",
    "Heat sources",
    (
        (
            Field("source", "Source", "choice", needed=True),
            Field("gas_flow", "Gas flow", "quantity", "0.8 kg/h"),
            Field("tip", "Tip or nozzle", "text"),
            Field("ceiling", "Goes up to", "quantity", "1000 °C"),
            Field("chamber", "Chamber length", "quantity", "200 mm"),
        ),
    ),
    row="Heat source",
)
BATH = Block(
    "workshop.bath",
    "Quench baths",
    (
        (
            Field("medium", "Medium", "choice", needed=True),
            Field("volume", "Volume", "quantity", "8 l, 2 gal"),
            Field("temperature", "Temperature", "quantity", "40 °C"),
            _closed(Bath, "agitation", "Motion"),
        ),
    ),
    row="Bath",
)
TEMPER = Block(
    "workshop.temper",
    "Means of tempering",
    (
        (
            _closed(TemperMeans, "means", "Means"),
            Field("ceiling", "Goes up to", "quantity", "250 °C"),
        ),
    ),
    row="Means",
)
STOCK = Block(
    "workshop.stock",
    "Bars in the rack",
    (
        (
            Field(
                "steel",
                "Steel, by any name, or unknown",
                "text",
                "EN 19, 1.7225, unknown",
                needed=True,
            ),
            Field("condition", "Condition", "text", "annealed, prehard"),
            Field("size", "Size", "quantity", "25 mm"),
            _closed(Stock, "evidence", "Known by"),
        ),
    ),
    row="Bar",
)
PRIORITIES = Block(
    "priorities", "What matters most", ((_closed(Priorities, "preset", "Weighing"),),)
)
BLOCKS = (
    USE, PART, SECTION, FEATURE, ZONE, LOAD, LIMIT,
    HEAT, BATH, TEMPER, WORKSHOP, STOCK, PRIORITIES,
)  # fmt: skip


def _place(block: Block, field: Field) -> str:
    """Return a field's place without row numbers."""
    return f"{block.path}.{field.name}" if block.path else field.name


FIELDS: Mapping[str, Field] = {
    _place(block, field): field for block in BLOCKS for field in block.fields
}

__all__ = ["BLOCKS", "FIELDS", "Block", "Field", "Kind"]
