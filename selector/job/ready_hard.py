"""What is bought hard: an element or bar that a part cannot simply be cut to."""

from catalog.steel import Condition
from selector.gate import Gate
from selector.hardness_scale import hrc_from_hb
from selector.job.treatment import Treatment
from selector.requirement import Requirement
from selector.requirement.part import Section
from selector.requirement.trade_name import does

# Nobody cuts these in what is bought hard; a flat may be ground to an edge, slotted by a disc
# and drilled with carbide.
UNCUT = frozenset(
    {"teeth", "slot", "keyway", "thread", "edge", "taper", "groove", "cross-hole"}
)
UNCUT_FLAT = UNCUT - {"edge", "slot", "cross-hole"}
# What a screw bought ready comes with, its point and its drive among them.
_OF_A_SCREW = frozenset({"thread", "edge", "taper", "slot", "groove"})
# A ready-hard element is bought at its own size, within this; a screw may be given by the core
# of its thread, which is no thinner than this share of its size (ISO 724). [mm], [-]
SAME_SIZE_MM, CORE_OF_THREAD = 0.02, 0.75
# Bar delivered harder is not turned, tapped or milled in a small shop. Common practice. [HRC]
TURNED_HRC = 44.0


def ready_hard(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to what is bought hard for a part it cannot simply be cut to.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    work : Treatment
        What is bought hard, or softer bar, to which nothing is objected.

    Returns
    -------
    Gate or None
        None where the part can be cut to it.
    """
    element = work.condition.name == "hard-element"
    softened = work.stock is not None and work.route.process != "none"
    if not element and (softened or delivered_hrc(work.condition) <= TURNED_HRC):
        return None
    shapes = {_shape(section) for section in asked.part.section}
    kinds = {feature.kind for feature in asked.part.feature}
    unlike = work.stock is None and not shapes <= set(work.condition.shapes)
    if not element and shapes == {"flat"} and not unlike:
        uncut = kinds & UNCUT_FLAT
        return Gate("stock", "fail", _uncut("plate bought hard")) if uncut else None
    what = "a ready-hard element" if element else "bar bought hard"
    sizes = {section.size for section in asked.part.section}
    screw = is_screw(work.condition)
    if unlike or (len(sizes) > 1 and not screw):
        # A dowel or a hard shaft is one plain round, a key one plain hexagon.
        text = f"{what} is one plain {work.condition.shapes[0]}; this part is not"
        return Gate("stock", "fail", text)
    if kinds & (UNCUT - _comes_with(work.condition)):
        return Gate("stock", "fail", _uncut(what))
    # Where an edge cuts or strikes, or an end is formed, the shape is the tool; none is ground
    # into a bought pin, whose skin may be thin.
    edged = any(zone.wear in {"abrasive", "edge-impact"} for zone in asked.zone)
    names = (asked.part.name, *(section.name or "" for section in asked.part.section))
    if (edged or any(does(name, "formed") for name in names)) and not work.condition.sold_for:
        return Gate("stock", "fail", f"an edge or form cannot be cut in {what}")
    return _sold_so(asked, work.condition, max(sizes)) if element else None


def _shape(section: Section) -> str:
    """Return the shape that a section is bought in: what has a bore is tube."""
    return "tube" if section.shape == "round" and section.bore is not None else section.shape


def is_wire(sold: Condition) -> bool:
    """Return whether bar bought hard is wire, to be wound or bent as it comes."""
    return sold.name == "prehard" and sold.shapes == ("round",)


def is_screw(sold: Condition) -> bool:
    """Return whether what is sold is a screw, with its thread and its point."""
    return any(word.endswith("screw") for word in sold.sold_for)


def _comes_with(sold: Condition) -> frozenset[str]:
    """Return what need not be cut in a thing: it is sold with it, or ground to its edge."""
    if is_screw(sold):
        return _OF_A_SCREW
    return frozenset({"edge"}) if sold.sold_for else frozenset()


def delivered_hrc(sold: Condition) -> float:
    """Return how hard bar is as delivered, at the middle of its range; 0 if unknown. [HRC]."""
    if sold.hardness_hrc is not None:
        return sold.hardness_hrc.middle
    if sold.hardness_hb is None:
        return 0.0
    return float(hrc_from_hb(sold.hardness_hb.middle, outside="extend"))


def _uncut(what: str) -> str:
    """Return that features are beyond what can be cut in hard bar."""
    return f"its features cannot be cut in {what}"


def nominal_mm(sold: Condition, size_mm: float) -> float | None:
    """Return the size that a ready-hard element is bought in for a part.

    Parameters
    ----------
    sold : Condition
        The element, with the sizes that it is sold in.
    size_mm : float
        Thickest section of the part; of a screw it may be the core of the thread. [mm]

    Returns
    -------
    float or None
        None where none of its sizes will do. [mm]
    """
    if sold.sold_mm is None:
        return size_mm
    least = CORE_OF_THREAD if is_screw(sold) else 1.0
    return next(
        (
            given
            for given in sorted(sold.sold_mm.values)
            if least * given - SAME_SIZE_MM <= size_mm <= given + SAME_SIZE_MM
        ),
        None,
    )


def _sold_so(asked: Requirement, sold: Condition, size: float) -> Gate | None:
    """Object to a size or length that a ready-hard element is not sold in."""
    if sold.sold_mm is not None and nominal_mm(sold, size) is None:
        near = min(sold.sold_mm.values, key=lambda given: abs(given - size))
        return Gate("stock", "fail", f"not sold in {size:g} mm; the nearest is {near:g} mm")
    if size < sold.size_mm.low:
        return Gate("stock", "fail", f"sold from {sold.size_mm.low:g} mm")
    longest = sold.length_mm
    if longest is not None and asked.part.length_mm > longest.high:
        text = f"sold up to {longest.high:g} mm long; the part is {asked.part.length_mm:g} mm"
        return Gate("stock", "fail", text)
    return None
