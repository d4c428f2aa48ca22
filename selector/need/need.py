"""What the part must bear, before any steel is named: hardness, depth and strength, and why."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog, load_catalog
from selector.decision.output import zone_out
from selector.duty.contact import (
    CORNER_YIELD,
    Corner,
    Pressing,
    blow_force_n,
    corner_factor,
    corners,
    pressings,
)
from selector.duty.stiffness import stiffness
from selector.duty.strength import LOAD_LOG_SD, Bearing, bearing, section_factor
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.job.candidates import screened
from selector.job.geometry import area_mm2
from selector.job.job import Job, resolved
from selector.job.treatment import NO_TEMPER, Treatment
from selector.mechanics.strength import strength
from selector.need import words
from selector.need.record import ContactNeed, NeedOut, PlainBar, SectionNeed
from selector.option.cost import bill, order_of
from selector.option.preparation import supply_hrc
from selector.record import Spread
from selector.requirement import Requirement
from selector.wording import shown

Floats = NDArray[np.float64]
# Nine loads in ten, and nineteen in twenty, lie within this many standard deviations.
NINE_IN_TEN, NINETEEN_IN_TWENTY = 1.2816, 1.6449
# Hardness looked at: from the softest bar to the hardest tool.
_HV = np.linspace(90.0, 850.0, 761)
# How easily a bar is come by.
_SELDOM = ("easy", "order", "rare")
# Cores a hard layer is laid over: soft bar and pre-hardened bar. Common practice. [HV]
_CORES = (("soft bar", 200.0), ("pre-hardened bar", 300.0))


def need(asked: Requirement, catalog: Catalog | None = None) -> NeedOut:
    """Return what a part must bear and what hardness that takes.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog, optional
        What is known; the shipped catalogue if absent.

    Returns
    -------
    NeedOut
        Ready for JSON and for the terminal.
    """
    job = resolved(asked, catalog or load_catalog())
    bears = bearing(asked)
    sections = (*_strengths(asked, bears), *_corner_needs(asked), *_blow_need(asked))
    contacts = tuple(_contact(pressing) for pressing in pressings(asked))
    hard = [d for d in job.demands if d.floor_hrc is not None]
    bar = _plain_bar(job, bears, sections)
    verdict = _verdict(sections, bar, hard=bool(hard))
    return NeedOut(
        part=asked.part.name,
        verdict=verdict,
        headline=words.headline(verdict, job.leading, sections, bar),
        zones=tuple(zone_out(d) for d in job.demands),
        sections=sections,
        contacts=contacts,
        as_bought=bar,
        remarks=tuple(s for s in (stiffness(asked), *words.gaps(asked)) if s),
    )


def _spread(
    values: tuple[float, float, float], unit: str, relation: str, **inputs: float | str
) -> Spread:
    """Return a figure known by its values at a light, the stated and a heavy load."""
    low, middle, high = values
    return Spread(
        p05=round(low, 3),
        p50=round(middle, 3),
        p95=round(high, 3),
        unit=unit,
        relation=relation,
        inputs=dict(inputs),
        source=_SOURCES[relation],
        validity=(),
    )


# Where each relation is published; its function holds the full citation.
_SOURCES = {
    "least hardness whose factor of strength is 1": (
        "mechanics.strength: ISO 18265; Pavlina and Van Tyne 2008; Murakami 2002; notches by "
        "Peterson 1974"
    ),
    "greatest hardness at which its notch does not decide": (
        "mechanics.strength.static_factor: common practice"
    ),
    "corner bearing": "mechanics.contact.corner_bearing_mpa: common practice, estimated",
    "least hardness that springs back from the blow": (
        "mechanics.strength.impact_force_n: Timoshenko, strain energy; yield as strength"
    ),
    "Hertz line contact": "mechanics.contact.hertz_line: Johnson 1985, chapter 4",
    "least hardness that bears the pressure": (
        "mechanics.contact: ISO 6336-5 rolling, ISO 76 and bearing catalogues at rest"
    ),
    "depth of shear beyond what the core bears": (
        "mechanics.contact.line_shear_mpa: Johnson 1985, Eq. 4.46"
    ),
    "hardness as sold": "catalogue",
}


def _over(deviation: float) -> float:
    """Return the load over the stated one at a standard deviation of its logarithm."""
    return float(np.exp(LOAD_LOG_SD * deviation))


def _hrc(hv: float) -> float:
    """Return a Vickers hardness on the C scale, carried on below its end."""
    return float(hrc_from_hv(hv, outside="extend"))


_SOFTEST_HRC, _HARDEST_HRC = _hrc(_HV[0]), _hrc(_HV[-1])


@dataclass(frozen=True, slots=True)
class _Span:
    """The softest that bears a load, and the hardest of the run above it. [HRC]."""

    low_hrc: float
    high_hrc: float


@dataclass(frozen=True, slots=True)
class _Spans:
    """What bears a light, the stated and a heavy load; None where nothing does."""

    light: _Span | None
    stated: _Span | None
    heavy: _Span | None

    def softest(self) -> tuple[float, float, float]:
        """Return the softest that bears each load, the hardest of all where nothing does."""
        low, middle, high = (
            _HARDEST_HRC if span is None else span.low_hrc
            for span in (self.light, self.stated, self.heavy)
        )
        return low, middle, high


def _span(factor: Floats, over: float) -> _Span | None:
    """Return what bears a load, by the factor at each hardness looked at."""
    bears = factor >= over
    if not bears.any():
        return None
    first = int(np.argmax(bears))
    stops = np.flatnonzero(~bears[first:])
    return _Span(_hrc(_HV[first]), _hrc(_HV[first + int(stops[0]) - 1 if stops.size else -1]))


def _spans(factor: Floats, power: float = 1.0) -> _Spans:
    """Return what bears three loads, where the stress follows a power of the load."""
    light, stated, heavy = (
        _span(factor, _over(d) ** power) for d in (-NINETEEN_IN_TWENTY, 0.0, NINETEEN_IN_TWENTY)
    )
    return _Spans(light, stated, heavy)


def _window(span: _Span | None) -> words.Window | None:
    """Return a span whose end is None where all steels lie beyond it."""
    if span is None:
        return None
    low = None if span.low_hrc <= _SOFTEST_HRC else span.low_hrc
    return words.Window(low, None if span.high_hrc >= _HARDEST_HRC else span.high_hrc)


def _strengths(asked: Requirement, bears: Bearing) -> tuple[SectionNeed, ...]:
    """Return what each section needs to bear torque, bending and axial load together."""
    if not bears.is_known:
        return ()
    return tuple(_strength(asked, bears, number) for number in range(len(bears.stressed)))


def _strength(asked: Requirement, bears: Bearing, number: int) -> SectionNeed:
    """Return what one section needs."""
    section, factor = asked.part.section[number], section_factor(bears, number, _HV)
    spans, sure = _spans(factor), _span(factor, _over(NINE_IN_TEN))
    load = asked.load
    kinds = {"torque": load.torque, "bending": load.bending, "axial load": load.axial}
    governs = " and ".join(name for name, value in kinds.items() if value)
    if load.cycles == "fatigue":
        governs += ", in fatigue too"
    notch = max(bears.notches.torsion[number], bears.notches.bending[number])
    inputs = {name: value for name, value in kinds.items() if value} | {
        "shape": section.shape,
        "size_mm": section.size,
        "notch_factor": round(float(notch), 2),
    }
    light, stated, heavy = spans.light, spans.stated, spans.heavy
    least = most = None
    if light and stated:
        name = "least hardness whose factor of strength is 1"
        least = _spread(spans.softest(), "HRC", name, **inputs)
    if stated and heavy and heavy.high_hrc < _HARDEST_HRC:
        ends = (heavy.high_hrc, stated.high_hrc, (light or stated).high_hrc)
        name = "greatest hardness at which its notch does not decide"
        most = _spread(ends, "HRC", name, **inputs)
    return SectionNeed(
        section=number + 1,
        name=section.name,
        governs=governs,
        least=least,
        most=most,
        text=words.strength(_window(sure), _window(stated), governs),
    )


def _corner_needs(asked: Requirement) -> tuple[SectionNeed, ...]:
    """Return what the corners of squares and hexagons need not to round."""
    return tuple(_corner(asked, corner) for corner in corners(asked))


def _corner(asked: Requirement, corner: Corner) -> SectionNeed:
    """Return what one drive end needs at its corners."""
    section = asked.part.section[corner.section]
    factor = corner_factor(corner, _HV)
    sure = _span(factor, _over(NINE_IN_TEN))
    text = "no hardness keeps the corners from rounding: a longer or larger drive"
    if sure is not None:
        text = (
            f"{shown(sure.low_hrc)} or more keeps the corners from rounding "
            f"({corner.pressure_mpa:.0f} MPa on them, {CORNER_YIELD:g} of yield strength borne)"
        )
    if corner.mate_hv is not None:
        sides = "keeps" if corner_factor(corner, corner.mate_hv) >= 1 else "rounds first"
        text += f"; what it runs in, {shown(_hrc(corner.mate_hv))}, {sides}"
    return SectionNeed(
        section=corner.section + 1,
        name=section.name,
        governs="corners of the drive",
        least=_spread(
            _spans(factor).softest(),
            "HRC",
            "corner bearing",
            torque_nm=float(asked.load.torque or 0.0),
            flats_mm=section.size,
            engaged_mm=section.length,
        ),
        most=None,
        text=text,
    )


def _blow_need(asked: Requirement) -> tuple[SectionNeed, ...]:
    """Return what the thinnest section needs to spring back from the stated blow."""
    force = blow_force_n(asked)
    if force is None:
        return ()
    areas = [area_mm2(section) for section in asked.part.section]
    thin = int(np.argmin(areas))
    stress = force / areas[thin]
    span = _span(strength(_HV).yield_mpa / stress, 1.0)
    low = span.low_hrc if span else _HARDEST_HRC
    relation = "least hardness that springs back from the blow"
    energy = float(asked.load.impact_energy or 0.0)
    least = _spread((low, low, low), "HRC", relation, energy_j=energy, area_mm2=areas[thin])
    return (
        SectionNeed(
            section=thin + 1,
            name=asked.part.section[thin].name,
            governs="blow",
            least=least,
            most=None,
            text=words.blow(energy, force, None if span is None else low),
        ),
    )


def _contact(pressing: Pressing) -> ContactNeed:
    """Return what one contact asks."""
    pressure, half = pressing.pressure_mpa, float(pressing.hertz.half_width_mm)
    loads = [_over(d) ** 0.5 for d in (-NINETEEN_IN_TWENTY, 0.0, NINETEEN_IN_TWENTY)]
    inputs = {"half_width_mm": round(half, 4)}
    # Pressure follows the root of the load on a line.
    spans, surface = _spans(pressing.bears_mpa(_HV) / pressure, power=0.5), None
    if spans.stated is not None:
        name = "least hardness that bears the pressure"
        surface = _spread(spans.softest(), "HRC", name, pressure_mpa=round(pressure))
    depths = {
        core: _spread(
            (pressing.depth_mm(hv),) * 3,
            "mm",
            "depth of shear beyond what the core bears",
            core_hv=hv,
            **inputs,
        )
        for core, hv in _CORES
    }
    line = "Hertz line contact"
    shear = float(pressing.hertz.shear_depth_mm)
    return ContactNeed(
        zone=pressing.zone + 1,
        pressure=_spread(tuple(pressure * s for s in loads), "MPa", line, **inputs),
        shear_depth=_spread(tuple(shear * s for s in loads), "mm", line, **inputs),
        surface=surface,
        depth_over_core=depths,
        text=words.contact(pressure, surface, depths, rolling=pressing.rolling),
    )


def _plain_bar(job: Job, bears: Bearing, needs: tuple[SectionNeed, ...]) -> PlainBar | None:
    """Return the bar nearest to hand that bears the load as bought, None where none does."""
    if any(item.least is None for item in needs):
        return None
    fit = [
        item.treatment
        for item in screened(job.asked, job.catalog, job.bench)
        if item.gate is None
        and item.treatment.route.process == "none"
        and item.treatment.condition.name != "hard-element"
        and _serves(_hrc_as_sold(item.treatment, job), bears)
    ]
    work = min(fit, key=lambda work: _far_to_seek(work, job), default=None)
    if work is None:
        return None
    hrc = _hrc_as_sold(work, job)
    low, middle, high = (float(x) for x in np.quantile(hrc, (0.05, 0.5, 0.95)))
    return PlainBar(
        steel=work.steel.name,
        condition=work.condition.name,
        hardness=_spread((low, middle, high), "HRC", "hardness as sold", steel=work.steel.name),
        text=f"{work.steel.name}, {work.condition.name}, {shown(middle)} as sold",
    )


def _far_to_seek(work: Treatment, job: Job) -> tuple[bool, int, float]:
    """Return the rack before the shop, what every shop has before the rest, then the price."""
    seldom = _SELDOM.index(work.condition.availability)
    return (
        work.stock is None,
        seldom,
        float(np.median(bill(work, NO_TEMPER, order_of(job)).cost)),
    )


def _hrc_as_sold(work: Treatment, job: Job) -> Floats:
    """Return the hardness of a bar as sold, over the sample. [HRC]."""
    return supply_hrc(work, job.of_steel(work.steel.slug))


def _serves(hrc: Floats, bears: Bearing) -> bool:
    """Return whether nine bars in ten bear nine loads in ten."""
    if np.isnan(hrc).any():
        return False
    hv = np.array([max(float(hv_from_hrc(np.quantile(hrc, 0.1), outside="extend")), _HV[0])])
    over = _over(NINE_IN_TEN)
    strong = not bears.is_known or all(
        float(section_factor(bears, n, hv)[0]) >= over for n in range(len(bears.stressed))
    )
    return strong and all(
        float(corner_factor(corner, hv)[0]) >= over for corner in bears.corners
    )


def _verdict(needs: tuple[SectionNeed, ...], bar: PlainBar | None, *, hard: bool) -> str:
    """Return what hardness is needed for, in a word."""
    if any(item.least is None for item in needs):
        return "no_hardness_bears_it"
    # What any steel bears takes no hardness, though no bar of known hardness be at hand.
    borne = bar is not None or all(_is_borne_by_any(need) for need in needs)
    if not hard:
        return "none" if borne else "strength"
    return "wear" if borne else "wear_and_strength"


def _is_borne_by_any(need: SectionNeed) -> bool:
    """Return whether the softest steel bears a heavy load here."""
    heaviest = need.least.p95 if need.least else None
    return heaviest is not None and heaviest <= round(_hrc(_HV[0]), 3)
