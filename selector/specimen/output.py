"""What the records of `quench` and `temper` have in common, and their sentences."""

import math

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.figure import Provenance, figure
from selector.hardening.as_quenched import AsQuenched
from selector.hardening.kind import by_composition, is_high_alloy
from selector.hardening.tempered import curve_reach_c, whole_curve
from selector.heat.boiling import bath_temperature_c
from selector.job.process import TEMPER_ERROR, ReadingError, reading_error
from selector.job.treatment import Temper
from selector.record import rounded
from selector.requirement.part import Section
from selector.specimen.hardening import hardening
from selector.specimen.record import (
    BathOut,
    HeatOut,
    OriginOut,
    QuenchOut,
    RangeOut,
    SectionOut,
    SteelOut,
)
from selector.specimen.specimen import SHOP, Specimen
from selector.wording import shown, shown_range

Floats = NDArray[np.float64]
# Tables of temper colours end at this hold; curves that begin so cold begin at no temper.
COLOURS_TO_S, CURVE_FROM_C = 3600.0, 205.0
_MILDEST = ("air", "oil", "water")
COMPOSITION = "Composition: any within the limits of the standard, usual residuals included."


def range_out(values: Floats) -> RangeOut:
    """Return median and 90 % range of a sample."""
    known = figure(values, Provenance("", "", ""))
    return RangeOut(p05=rounded(known.p05), p50=rounded(known.value), p95=rounded(known.p95))


def hardness_words(hrc: RangeOut) -> tuple[str, str]:
    """Return a hardness and its range for the reader, in one scale."""
    if hrc.p05 is None or hrc.p50 is None or hrc.p95 is None:
        return "unknown", ""
    return shown(hrc.p50), shown_range(hrc.p05, hrc.p95, brinell=hrc.p50 < 20.0)


def steel_out(steel: Steel) -> SteelOut:
    """Return a steel as plain data."""
    return SteelOut(
        name=steel.name, slug=steel.slug, spoken=steel.spoken, hardens=hardening(steel)
    )


def origin_out(fresh: AsQuenched, *after: str, validity: tuple[str, ...] = ()) -> OriginOut:
    """Return where the hardness of a quench comes from, and of what follows it."""
    return OriginOut(
        relation="; then ".join((fresh.relation, *after)),
        source=fresh.source,
        validity=(*fresh.validity, *validity),
    )


def origin_words(origin: OriginOut) -> list[str]:
    """Return what computes a hardness and its source, as a paragraph."""
    return [f"by {origin.relation}; source: {origin.source}"]


def quench_out(of: Specimen) -> QuenchOut:
    """Return from what and in what a specimen is quenched."""
    bath, hardened = of.quench.bath, of.steel.hardened
    medium = of.treatment.medium
    window = hardened.temperature_c.source if hardened else ""
    return QuenchOut(
        section=_section_out(of.section),
        bath=BathOut(
            medium=medium.slug if medium else "",
            temperature_c=None if bath is None else bath_temperature_c(bath),
            agitation=None if bath is None else bath.agitation,
            delay_s=of.quench.delay_s,
        ),
        heat=None
        if of.heat is None
        else HeatOut(
            temperature_c=of.heat.target_c,
            hold_s=float(np.max(of.heat.hold_s)),
            source="as given" if of.heat_given else f"middle of its range ({window})",
        ),
    )


def quench_words(made: QuenchOut) -> str:
    """Return a quench within a sentence: "round 30 mm, from 840 °C into oil at 50 °C"."""
    medium = made.bath.medium.replace("-", " ")
    warm = made.bath.temperature_c
    into = f"into {medium}" if warm is None else f"into {medium} at {warm:.0f} °C"
    into = into.replace("into air", "in air")
    heat = f"from {made.heat.temperature_c:.0f} °C " if made.heat else "with its case "
    return f"{made.section.text}, {heat}{into}"


def quench_assumed(of: Specimen, made: QuenchOut) -> list[str]:
    """Return what is assumed of heat and bath, in sentences."""
    moved = {None: "", "none": ", still", "moderate": ", moved moderately"}
    motion = moved.get(made.bath.agitation, f", {made.bath.agitation} motion")
    said = [
        f"Bath: as usual{motion}, reached {made.bath.delay_s:.1f} s after the fire.",
        *_other_bath(of),
        COMPOSITION,
    ]
    if made.heat is None:
        text = "Core: all dissolved, no carbon taken up. `temperwright advise` judges the case."
        return [text, *said]
    furnace = f"a furnace known to {_sd_c(reading_error(of.treatment, SHOP))}"
    held = f"{made.heat.hold_s / 60.0:.0f} min in {furnace}"
    if is_high_alloy(of.steel):  # its hold does not enter
        held = f"held as it should be in {furnace}"
    sold = of.treatment.condition.name
    bar = sold if sold in of.treatment.route.conditions else "annealed"
    text = f"Heat: {made.heat.source}; {held}; {bar} bar."
    other = [*_other_heat(of, made.heat), *_only_a_firm(of.steel)]
    return [text, *other, "Skin: no carbon lost in the heat.", *said]


def _only_a_firm(steel: Steel) -> list[str]:
    """Return why no workshop hardens a steel, where its catalogue entry says so."""
    return [
        why.why.text for why in steel.limitation
        if why.process == "quench" and why.verdict == "no"
    ]  # fmt: skip


def _other_heat(of: Specimen, heat: HeatOut) -> list[str]:
    """Return that the heat lies outside the range of the steel, where it does."""
    hardened = of.steel.hardened
    if hardened is None or of.steel.hardens_by == ("case",):  # that range is its case's
        return []
    span = hardened.temperature_c
    if span.low <= heat.temperature_c <= span.high:
        return []
    return [f"This steel is hardened from {span.low:g} to {span.high:g} °C ({span.source})."]


def _other_bath(of: Specimen) -> list[str]:
    """Return that the steel is meant for a keener or a milder bath, where it is."""
    medium, hardened = of.treatment.medium, of.steel.hardened
    if medium is None or hardened is None or medium.severity_class == hardened.quench:
        return []
    keener = _MILDEST.index(medium.severity_class) > _MILDEST.index(hardened.quench)
    how = "harsher, and may crack it" if keener else "milder"
    name = medium.slug.replace("-", " ")
    return [f"This steel is sold as one for {hardened.quench}: {name} is {how}."]


def temper_assumed(steel: Steel, time_s: float, shown_at: tuple[Temper, ...]) -> list[str]:
    """Return what is assumed of the tempers that are shown, in sentences."""
    said = [f"Temper: in a furnace known to {_sd_c(TEMPER_ERROR['furnace'])}."]
    curve = None if by_composition(steel) else steel.tempered
    if curve is not None and curve.times > 1:
        said.append(f"Tempered {curve.times} times, as is usual: the time is that in all.")
    if curve is not None and curve.curve_hrc.points[0][0] > CURVE_FROM_C:
        first = f"{curve.curve_hrc.points[0][0]:g} °C"
        begun = whole_curve(steel)[0, 0] < curve.curve_hrc.points[0][0]
        how = "lie between as quenched and" if begun else "read as"
        said.append(f"Its curve begins at {first}; colder tempers {how} that one.")
    end_c = curve_reach_c(steel)
    if max(temper.temperature_c for temper in shown_at) > end_c:
        said.append(f"Its curve ends at {end_c:g} °C; past it its last slope is carried on.")
    if is_high_alloy(steel):
        return [*said, "No table holds for the colours of steel so rich in alloy."]
    colours = "Colours are those of bright carbon steel; alloy steel colours later"
    longer = f", and past {COLOURS_TO_S / 3600.0:g} h they are carried on"
    return [*said, f"{colours}{longer if time_s > COLOURS_TO_S else ''}."]


def _sd_c(error: ReadingError) -> str:
    """Return how well a heat is known: "9 °C (one standard deviation)"."""
    return f"{math.hypot(error.bias_c, error.scatter_c):.0f} °C (one standard deviation)"


def _section_out(bar: Section) -> SectionOut:
    """Return a section as plain data."""
    other = bar.width if bar.shape == "flat" else bar.bore
    size = f"{bar.size:.4g}" if other is None else f"{bar.size:.4g} x {other:.4g}"
    return SectionOut(
        shape=bar.shape,
        size_mm=bar.size,
        width_mm=bar.width,
        bore_mm=bar.bore,
        text=f"{bar.shape} {size} mm",
    )
