"""Which tempers a workshop can give a treatment: by what means, how hot, how often."""

from catalog.heat_source import HeatSource
from catalog.steel import Steel
from selector.job.treatment import (
    DISSOLVES_WT_PCT,
    FLAMES,
    LAID_ON,
    NO_TEMPER,
    Means,
    Temper,
    Treatment,
)
from selector.metallurgy.transformation import martensite_start
from selector.requirement.workshop import Workshop

# Time and hottest temper by means; common practice, no source. A furnace temper takes an hour,
# slow indirect heating a good quarter of an hour, a flame some minutes. Blazing off burns the
# quench oil from a thin spring: one temperature, that of the burning oil. A tray of hot
# sand over the fire holds a part past the colours, up to the first red in the dark.
_TIME_S: dict[Means, float] = {
    "oven": 3600.0,
    "furnace": 3600.0,
    "plate": 1200.0,
    "torch": 300.0,
    "blaze": 120.0,
    "sand": 1200.0,
    "residual": 60.0,
}
_CEILING_C: dict[Means, float] = {
    "oven": 250.0,
    "furnace": 700.0,
    "plate": 350.0,
    "torch": 330.0,
    "blaze": 390.0,
    "sand": 475.0,
    "residual": 310.0,
}
BLAZE_C, BLAZES, BLAZE_THIN_MM = 390.0, 3, 6.0
TORCH_GUIDED_C = 600.0
# A case is tempered no hotter, or it is soft for nothing. Common practice. [°C]
CASE_CEILING_C = 225.0
# The coolest temper by a dial, and by eye, whom bright steel first shows yellow there. [°C]
_LOWEST_C, _COLOURED_FROM_C, _STEP_C = 150, 200, 25
_SAND_FROM_C = 400
# Steel for hard edges is not let down past the colours by hand: springs are of less carbon.
# Common practice.
_WITHIN_COLOURS = frozenset({"water-tool", "oil-tool", "bearing"})
# Hot-work steel is tempered past its second hardness and never short of it: producers' sheets
# (from memory). [°C]
_HOT_WORK_FROM_C = 500
_BY_DIAL: frozenset[Means] = frozenset({"oven", "furnace"})
# A ceiling is read off a dial: an oven of 480 °F reaches 250 °C. Common practice. [°C]
_DIAL_C = 2.0
# A bath for bainite is kept so far above the martensite start. Common practice. [°C]
ABOVE_MS_C = 10.0
# How often a kind of steel is tempered at least, as what austenite is left turns in cooling
# from the first: tool steel producers' sheets (from memory); O1 gauge plate twice, and what is
# struck of water-hardening steel too, by common practice.
LEAST_TIMES: dict[str, int] = {
    "high-speed": 3, "hot-work-tool": 2, "air-tool": 2, "oil-tool": 2,
    "martensitic-stainless": 2,
}  # fmt: skip
STRUCK_TIMES: dict[str, int] = {"water-tool": 2, "shock-tool": 2}


def temper_ceilings(workshop: Workshop, sources: tuple[HeatSource, ...]) -> dict[Means, float]:
    """Return the means of tempering the workshop has, each with its ceiling.

    Its heat sources count: an oven tempers, and a flame tempers a polished part to a colour. A
    flame goes beyond the colours only with what reads the part in it: a crayon or infrared.

    Parameters
    ----------
    workshop : Workshop
        What the workshop has.
    sources : tuple of HeatSource
        Its heat sources in the catalogue.

    Returns
    -------
    dict of str to float
        Ceiling by means. [°C]
    """
    ceilings: dict[Means, float] = {}
    for source in sources:
        if source.kind == "furnace":
            hotter = ceilings.get("furnace", 0.0)
            ceilings["furnace"] = max(_CEILING_C["furnace"], hotter)
        elif source.kind == "salt-bath":
            # A pot of nitrate salt tempers as evenly as a furnace, up to its own ceiling.
            hotter = ceilings.get("furnace", 0.0)
            ceilings["furnace"] = max(source.ceiling_c.value, hotter)
        elif source.kind == "oven":
            means: Means = "plate" if "plate" in source.slug else "oven"
            ceilings[means] = min(source.ceiling_c.value, 400.0)
        elif source.kind in FLAMES:
            guided = {"crayon", "infrared"} & set(workshop.measure)
            ceilings["torch"] = TORCH_GUIDED_C if guided else _CEILING_C["torch"]
            ceilings["residual"] = _CEILING_C["residual"]
            # A bar or plate heated from below by the flame, the part on it.
            ceilings.setdefault("plate", _CEILING_C["plate"])
            ceilings["blaze"] = _CEILING_C["blaze"]
            ceilings["sand"] = _CEILING_C["sand"]
    for given in workshop.temper:
        usual = TORCH_GUIDED_C if given.means == "torch" else _CEILING_C[given.means]
        known = max(usual, ceilings.get(given.means, 0.0))
        ceilings[given.means] = known if given.ceiling is None else given.ceiling
    return ceilings


def temper_times(steel: Steel, *, struck: bool = False) -> int:
    """Return how often a steel is tempered: as its sheet says, at least as the trade does."""
    published = steel.tempered.times if steel.tempered else 1
    trade = max(
        LEAST_TIMES.get(steel.kind, 1), STRUCK_TIMES.get(steel.kind, 1) if struck else 1
    )
    return max(published, trade)


def tempers(
    treatment: Treatment,
    ceilings: dict[Means, float],
    *,
    thin: bool = False,
    struck: bool = False,
) -> tuple[Temper, ...]:
    """Return the tempers to try on a treatment, rising for each means it can have."""
    # Nobody leaves what he has quenched untempered who can temper it.
    route = treatment.route
    if route.process in {"none", "anneal", "normalise", *LAID_ON}:
        return (NO_TEMPER,)
    if route.process == "austemper":
        return _baths(treatment)
    if route.process == "age":
        return _agings(treatment)
    usual: dict[Means, float] = {"furnace": _CEILING_C["furnace"]}
    has = usual if route.place == "subcontract" else ceilings
    cycles = 1 if route.process == "case" else temper_times(treatment.steel, struck=struck)
    grid: list[Temper] = []
    for means in route.temper:
        if means == "blaze":
            oily = treatment.medium is not None and "oil" in treatment.medium.slug
            if thin and oily and "blaze" in has:
                grid.append(Temper(means, BLAZE_C, _TIME_S[means], BLAZES))
            continue
        if means == "sand" and treatment.steel.kind in _WITHIN_COLOURS:
            continue
        top = (
            has.get(means, 0.0)
            if route.process != "case"
            else min(has.get(means, 0.0), CASE_CEILING_C)
        )
        lowest = _lowest_c(means, treatment.steel)
        grid += [
            Temper(means, float(heat), _TIME_S[means], cycles if means != "residual" else 1)
            for heat in range(lowest, int(top + _DIAL_C) + 1, _STEP_C)
        ]
    return tuple(grid) or (() if "residual" in route.temper else (NO_TEMPER,))


def _lowest_c(means: Means, steel: Steel) -> int:
    """Return the coolest temper of a steel by some means. [°C]."""
    if means not in _BY_DIAL:
        return _SAND_FROM_C if means == "sand" else _COLOURED_FROM_C
    hot = means == "furnace" and steel.kind == "hot-work-tool"
    return _HOT_WORK_FROM_C if hot else _LOWEST_C


def _baths(treatment: Treatment) -> tuple[Temper, ...]:
    """Return the salt temperatures in which a steel turns to bainite, above its Ms."""
    span, hours = treatment.route.temperature_c, treatment.route.time_h
    if span is None or hours is None:
        msg = f"{treatment.route.slug} needs temperature_c and time_h"
        raise ValueError(msg)
    least_c = max(span.low, _ms_c(treatment.steel) + ABOVE_MS_C)
    held_s = 300.0 * round(12.0 * (hours.low * hours.high) ** 0.5)
    heats = range(_STEP_C * int(-(-least_c // _STEP_C)), int(span.high) + 1, _STEP_C)
    return tuple(Temper("salt", float(heat), held_s) for heat in heats)


def _ms_c(steel: Steel) -> float:
    """Return where the martensite of a steel starts: published or by its analysis. [°C]."""
    known = steel.temperature_c.get("ms")
    if known is not None:
        return known.middle
    contents = {name: span.middle for name, span in steel.composition_wt_pct.items()}
    contents["C"] = min(contents.get("C", 0.0), DISSOLVES_WT_PCT)
    return float(martensite_start(contents))


def _agings(treatment: Treatment) -> tuple[Temper, ...]:
    """Return the published ageing treatments of a steel."""
    aged = treatment.steel.aged
    if aged is None:
        return (NO_TEMPER,)
    return tuple(
        Temper("furnace", heat, aged.time_h.value * 3600) for heat, _ in aged.curve_hrc.points
    )
