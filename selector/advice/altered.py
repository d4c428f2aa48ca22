"""A requirement changed in one thing: a tool more in the workshop, or a demand eased."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil

from catalog import Catalog
from catalog.route import Route
from selector.advice.advise import Advice
from selector.duty.strength import has_load
from selector.gate import GateName
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.option.movement import STOCK_MM
from selector.option.skin import GRINDERS
from selector.requirement import Requirement
from selector.requirement.part import Section
from selector.requirement.workshop import Bath, Heat, Measure
from selector.requirement.zone import Window
from selector.wording import in_sentence, shown

# How far a demand is given way to: loads by a tenth, run-out and days twofold, hardness by two
# points, sections and fillets by a millimetre, a thin section by its next size, a fifth; the
# budget by a quarter.
LESS, TWICE, POINTS_HRC, THICKER_MM, DEARER = 0.9, 2.0, 2.0, 1.0, 1.25
NEXT_SIZE = 0.2
OVEN_C, OIL_L, WATER_L = 250.0, 15.0, 15.0


@dataclass(frozen=True, slots=True)
class Change:
    """A requirement changed in one thing, that thing in words, and the gates it eases."""

    text: str
    asked: Requirement
    eases: frozenset[GateName] = frozenset()


_MONEY, _DAYS = frozenset[GateName]({"budget"}), frozenset[GateName]({"days"})
_TRUE = frozenset[GateName]({"movement"})
_HARDER, _SOFTER = (
    frozenset[GateName]({"not_too_hard", "snap", "blow", "hard_end"}),
    frozenset[GateName]({"hard_enough", "depth", "core"}),
)
_STRONGER = frozenset[GateName]({"strength", "contact", "snap", "blow", "cracking"})


def thought_of(advice: Advice) -> Iterator[Change]:
    """Yield the changes worth trying: a tool is sooner bought than a demand given up.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Yields
    ------
    Change
        Tools, then bar to buy or work sent out, then demands, the money last.
    """
    yield from _of_tools(advice.asked)
    if advice.asked.workshop.only_stock:
        yield _with(advice.asked, "With bar from a dealer", only_stock=False)
    yield from sent_out(advice.asked)
    yield from _of_window(advice)
    yield from demands_eased(advice.asked)
    yield from _of_money(advice)


def demands_eased(asked: Requirement) -> Iterator[Change]:
    """Yield loads, shape and limits, one of them eased; the money last.

    Parameters
    ----------
    asked : Requirement
        What is asked.

    Yields
    ------
    Change
        Only of what is stated.
    """
    yield from _of_loads(asked)
    yield from _of_shape(asked)
    yield from _of_limits(asked)


def sent_out(asked: Requirement) -> Iterator[Change]:
    """Yield the work of a firm, where nothing is to be sent out."""
    if not asked.workshop.subcontract:
        yield _with(asked, "Sent out to a firm", subcontract=True)


def sources_for(
    asked: Requirement, routes: Iterable[Route], catalog: Catalog
) -> Iterator[Change]:
    """Yield a heat source or a bath for each route that the workshop has none for.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    routes : iterable of Route
        Routes that were stopped.
    catalog : Catalog
        What is known.

    Yields
    ------
    Change
        The first source and bath that each route names; each change once.
    """
    has = {heat.source for heat in asked.workshop.heat}
    baths = {bath.medium for bath in asked.workshop.bath} | {"air"}
    given: set[tuple[str, ...]] = set()
    for route in routes:
        source = [] if has & {*route.heat_sources} else list(route.heat_sources[:1])
        medium = [] if baths & {*route.media} else list(route.media[:1])
        if route.place == "subcontract" or tuple(source + medium) in given | {()}:
            continue
        given.add(tuple(source + medium))
        names = [article(in_sentence(catalog.heat_sources[slug].name)) for slug in source]
        names += [f"a bath of {slug.replace('-', ' ')}" for slug in medium]
        shop = asked.workshop
        yield _with(
            asked,
            f"With {' and '.join(names)}",
            heat=(*shop.heat, *(Heat(source=slug) for slug in source)),
            bath=(*shop.bath, *(Bath(medium=slug) for slug in medium)),
        )


def article(name: str) -> str:
    """Return a thing with its article: "a kiln", "an oven"."""
    return f"{'an' if name[:1].lower() in 'aeiou' else 'a'} {name}"


def _of_money(advice: Advice) -> Iterator[Change]:
    """Yield the sum that lets the nearest in that money alone stops, past a quarter more."""
    limit, budget = advice.asked.limit, advice.asked.limit.budget
    dear = [item for item in advice.rejected if item.gate.name == "budget" and item.enough]
    if budget is None or not dear:
        return
    enough = max(dear, key=lambda item: item.nearness(budget)).enough or 0.0
    if enough > DEARER * budget:
        wider = limit.model_copy(update={"budget": float(ceil(enough))})
        text = f"With {ceil(enough)} {advice.job.catalog.prices.currency}"
        yield Change(text, advice.asked.model_copy(update={"limit": wider}), _MONEY)


def _with(asked: Requirement, text: str, **update: object) -> Change:
    """Return a change of the workshop."""
    more = asked.workshop.model_copy(update=update)
    return Change(text, asked.model_copy(update={"workshop": more}))


def _of_tools(asked: Requirement) -> Iterator[Change]:
    """Yield one tool more in the workshop, or a torch where there is no heat at all."""
    shop = asked.workshop
    if not shop.heat:
        yield _with(
            asked,
            "With a hand torch and a bucket of warm water",
            heat=(Heat(source="hand-torch"),),
            bath=(*shop.bath, Bath(medium="warm-water", volume=WATER_L)),
        )
        yield _with(
            asked,
            "With a kiln and a bath of oil",
            heat=(Heat(source="kiln"),),
            bath=(*shop.bath, Bath(medium="oil", volume=OIL_L)),
        )
        return
    tools: tuple[tuple[Measure, str], ...] = (
        ("crayon", "With a temperature crayon"),
        ("thermocouple", "With a thermocouple"),
    )
    for tool, text in tools:
        if tool not in shop.measure:
            yield _with(asked, text, measure=(*shop.measure, tool))
    if not any(heat.source == "kitchen-oven" for heat in shop.heat):
        oven = Heat(source="kitchen-oven", ceiling=OVEN_C)
        yield _with(asked, "With a kitchen oven to temper in", heat=(*shop.heat, oven))
    if not any("oil" in bath.medium for bath in shop.bath):
        oil = Bath(medium="oil", volume=OIL_L)
        yield _with(asked, "With a bath of oil", bath=(*shop.bath, oil))
    if not shop.protect:
        yield _with(asked, "Wrapped in foil against the air", protect=("foil",))


def _of_loads(asked: Requirement) -> Iterator[Change]:
    """Yield one load a tenth less."""
    for name in ("torque", "bending", "axial", "contact"):
        value = getattr(asked.load, name)
        if value:
            less = asked.load.model_copy(update={name: LESS * value})
            eased = asked.model_copy(update={"load": less})
            yield Change(f"With a tenth less {name}", eased, _STRONGER)


def _of_window(advice: Advice) -> Iterator[Change]:
    """Yield the window of the leading zone, stated or derived, two points wider an end."""
    lead = advice.job.leading
    asked, number = advice.asked, lead.zone
    zone = asked.zone[number]
    given = zone.hardness
    low, high = lead.low_hrc, lead.high_hrc
    if given is not None:
        low, high = (
            None if hv is None else float(hrc_from_hv(hv, outside="extend"))
            for hv in (given.min, given.max)
        )
    for end, known, by, words, eases in (
        ("min", low, -POINTS_HRC, "is enough", _SOFTER),
        ("max", high, POINTS_HRC, "is not too much", _HARDER),
    ):
        if known is None:
            continue
        ends = {"min": low, "max": high, end: known + by}
        window = {
            name: None if hrc is None else float(hv_from_hrc(hrc, outside="extend"))
            for name, hrc in ends.items()
        }
        wider = (given or Window(min=40.0)).model_copy(update=window)
        zones = list(asked.zone)
        zones[number] = zone.model_copy(update={"hardness": wider})
        text = f"If {shown(known + by)} {words}"
        yield Change(text, asked.model_copy(update={"zone": tuple(zones)}), eases)


def _of_shape(asked: Requirement) -> Iterator[Change]:
    """Yield the thinnest section, or all fillets, a millimetre more, where a load is known."""
    sections = list(asked.part.section)
    if not has_load(asked.load):
        return
    thin = min(range(len(sections)), key=lambda k: sections[k].size)
    thicker = [*sections]
    size_mm = sections[thin].size
    # The next size of thin wire or strip is a fifth more.
    more_mm = min(THICKER_MM, max(round(NEXT_SIZE * size_mm, 1), 0.1))
    thicker[thin] = sections[thin].model_copy(update={"size": round(size_mm + more_mm, 3)})
    name = sections[thin].name or f"section {thin + 1}"
    yield _shaped(asked, f"With {name} {thicker[thin].size:g} mm", thicker)
    if len(sections) > 1:
        rounded = [
            s.model_copy(update={"fillet": (s.fillet or 0.0) + THICKER_MM}) if k else s
            for k, s in enumerate(sections)
        ]
        yield _shaped(asked, f"With fillets {THICKER_MM:g} mm larger", rounded)


def _ground_true(asked: Requirement) -> Change:
    """Return a change of what a bow beyond the limit is met with: stock, ground off after."""
    flat = all(section.shape == "flat" for section in asked.part.section)
    by = "surface-grinder" if flat else "toolpost-grinder"
    part = asked.part
    stock_mm = part.stock_removal or STOCK_MM
    more = {"finish_after": (*part.finish_after, by), "stock_removal": stock_mm}
    text = f"With {stock_mm:g} mm left on and ground true after the heat"
    return Change(text, asked.model_copy(update={"part": part.model_copy(update=more)}), _TRUE)


def _shaped(asked: Requirement, text: str, sections: list[Section]) -> Change:
    """Return a change of the sections of the part."""
    part = asked.part.model_copy(update={"section": tuple(sections)})
    return Change(text, asked.model_copy(update={"part": part}), _STRONGER)


def _of_limits(asked: Requirement) -> Iterator[Change]:
    """Yield one limit eased."""
    limit = asked.limit

    def eased(text: str, eases: frozenset[GateName], **update: object) -> Change:
        wider = limit.model_copy(update=update)
        return Change(text, asked.model_copy(update={"limit": wider}), eases)

    if limit.runout:
        text = f"If it may run out {TWICE * limit.runout:g} mm"
        yield eased(text, _TRUE, runout=TWICE * limit.runout)
        if not GRINDERS & set(asked.part.finish_after):
            yield _ground_true(asked)
    if limit.days:
        yield eased(f"With {TWICE * limit.days:g} days", _DAYS, days=TWICE * limit.days)
    if limit.budget:
        more = DEARER * limit.budget
        yield eased(f"With a budget of {more:.0f}", _MONEY, budget=more)
