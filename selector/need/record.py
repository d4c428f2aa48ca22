"""The shape of what a part must bear, as plain data."""

from selector.record import Plain, Spread, ZoneOut


class SectionNeed(Plain):
    """The hardness that lets one section bear its load; `most` where harder would snap."""

    section: int
    name: str | None
    governs: str
    least: Spread | None
    most: Spread | None
    text: str


class ContactNeed(Plain):
    """What one contact asks of the surface, and how deep over which core."""

    zone: int
    pressure: Spread
    shear_depth: Spread
    surface: Spread | None
    depth_over_core: dict[str, Spread]
    text: str


class PlainBar(Plain):
    """The bar nearest to hand that serves as bought: the rack, then what is easily had."""

    steel: str
    condition: str
    hardness: Spread
    text: str


class NeedOut(Plain):
    """The whole answer: the first line, zones, sections, contacts and remarks."""

    part: str
    verdict: str
    headline: str
    zones: tuple[ZoneOut, ...]
    sections: tuple[SectionNeed, ...]
    contacts: tuple[ContactNeed, ...]
    as_bought: PlainBar | None
    remarks: tuple[str, ...]
