"""Route × workshop × part into the numbers that heat and metallurgy take."""

from dataclasses import dataclass, replace
from typing import get_args

import numpy as np
from numpy.typing import NDArray

from catalog import load_catalog
from catalog.medium import Agitation, Medium
from catalog.steel import Steel
from catalog.values import Span
from selector.heat.boiling import DELAY_S, Bath, Quench, bath_temperature_c, hottest_in_use_c
from selector.heat.operator import reading
from selector.heat.quench import bath_end_c
from selector.job.soak import soak_min
from selector.job.treatment import CHARTED, Means, Temper, Treatment
from selector.kept import per_record
from selector.metallurgy.hardening_heat import Heat, structure_of
from selector.requirement.workshop import Bath as KeptBath
from selector.requirement.workshop import Workshop
from selector.sampling import Normals

Floats = NDArray[np.float64]

# Heating rate and time at heat by kind of source, common practice, no source. [°C/s], [s]
RATE_C_PER_S = {"flame": 6.0, "fire": 2.0, "furnace": 0.2, "salt-bath": 3.0, "induction": 100.0,
                "firm-flame": 25.0, "laser": 1000.0}  # fmt: skip
HOLD_S = {"flame": 90.0, "fire": 180.0, "salt-bath": 600.0, "induction": 2.0, "firm-flame": 5.0,
          "laser": 0.5}  # fmt: skip
# What austenitises in seconds is taken past the heat of a furnace: a coil by 50 to 100 °C, a
# firm's burner by about 50 °C, a laser by 150 to 250 °C (ASM Handbook 4, from memory). [°C]
ABOVE_FURNACE_C = {"induction": 75.0, "firm-flame": 50.0, "laser": 200.0}
# These routes of a firm spray the heat as it leaves the coil or the burner; behind a laser the
# cold steel takes it as quickly.
SPRAYED = frozenset(ABOVE_FURNACE_C)
# Steel rich in carbon is held as long as its heat allows, up to this: carbide takes time to
# dissolve. Common practice, no source. [s]
RICH_HOLD_S = 600.0
HOT_PART_C = 850.0
# A thickness that stands for one that nobody states. [mm]
USUAL_MM = 25.0
# Oil for the steel that goes into it hot: ASM Handbook vol. 4, heat treating (from memory), as
# the catalogue's oils say. [l/kg]
OIL_L_PER_KG = 8.0


@dataclass(frozen=True, slots=True, order=True)
class ReadingError:
    """How far a heat is misread.

    `bias_c` lasts and `scatter_c` changes from heat to heat, both standard deviations. The
    light makes every hardening heat look duller than it is by `shift_c`.
    """

    bias_c: float
    scatter_c: float
    shift_c: float = 0.0


# A furnace with its own instrument. Common practice. [°C]
FURNACE = ReadingError(8.0, 5.0)
# Of a temper, by its means. Common practice. [°C]
TEMPER_ERROR: dict[Means, ReadingError] = {
    "oven": ReadingError(10.0, 6.0),
    "furnace": ReadingError(6.0, 4.0),
    "plate": ReadingError(10.0, 10.0),
    "torch": ReadingError(12.0, 14.0),
    "blaze": ReadingError(15.0, 15.0),
    # Past the colours: a splinter of dry wood chars, smokes and sparks, no red in the dark.
    "sand": ReadingError(20.0, 20.0),
    "residual": ReadingError(14.0, 18.0),
    "salt": ReadingError(4.0, 3.0),
    "none": ReadingError(0.0, 0.0),
}


def reading_error(treatment: Treatment, workshop: Workshop) -> ReadingError:
    """Return how far the hardening heat of a treatment is misread in this workshop."""
    if not treatment.by_eye:
        return FURNACE
    read, skill = reading(workshop.measure, workshop.light), workshop.skill
    return ReadingError(read.bias_c * skill.bias, read.scatter_c * skill.scatter, read.shift_c)


def held_s(steel: Steel, kind: str, thick_mm: float) -> float:
    """Return how long a steel is held at its hardening heat, by kind of source. [s]."""
    return 60.0 * soak_min(steel, thick_mm) if kind == "furnace" else HOLD_S.get(kind, 600.0)


def hardening_heat(
    treatment: Treatment, workshop: Workshop, normals: Normals, thick_mm: float = USUAL_MM
) -> Heat | None:
    """Return the hardening heat as this workshop gives it, None where nothing is quenched."""
    # A furnace soaks by steel and thickness, what else there is by its kind.
    target = target_c(treatment)
    if target is None:
        return None
    error = reading_error(treatment, workshop)
    lasting = normals["eye_bias" if treatment.by_eye else "furnace_bias"]
    peak = target + error.shift_c + error.bias_c * lasting
    peak = peak + error.scatter_c * normals["eye_scatter"]
    kind: str = treatment.source.kind if treatment.source else "furnace"
    if treatment.route.kind in SPRAYED:
        kind = treatment.route.kind
    carbon = treatment.steel.composition_wt_pct.get("C")
    structure = structure_of(treatment.condition.name, carbon.middle if carbon else 0.0)
    hold_s = held_s(treatment.steel, kind, thick_mm)
    if structure == "spheroidised" and treatment.source and kind in {"flame", "fire"}:
        hold_s = max(hold_s, min(RICH_HOLD_S, 60.0 * treatment.source.soak_max_min.value))
    return Heat(
        target_c=target,
        peak_c=peak[:, None],
        hold_s=hold_s,
        rate_c_per_s=RATE_C_PER_S.get(kind, 1.0),
        structure=structure,
        medium_class=treatment.medium.severity_class if treatment.medium else "oil",
        cold_c=treatment.route.cold_c.value if treatment.route.cold_c else None,
    )


def normalising_span(treatment: Treatment) -> Span:
    """Return the normalising temperatures of a steel, else those of the route. [°C]."""
    span = treatment.steel.temperature_c.get("normalise") or treatment.route.temperature_c
    if span is None:
        msg = f"{treatment.route.slug} needs temperature_c"
        raise ValueError(msg)
    return span


def target_c(treatment: Treatment) -> float | None:
    """Return the heat that turns a part to austenite, None where none does. [°C]."""
    if treatment.route.process == "normalise":
        return normalising_span(treatment).middle
    heats_c, firm_c = treatment.heats_c, treatment.route.temperature_c
    if not treatment.hardens or heats_c is None:
        return None
    furnace_c = 0.5 * sum(heats_c)
    above_c = ABOVE_FURNACE_C.get(treatment.route.kind)
    if above_c is None or firm_c is None:
        return furnace_c
    return float(np.clip(furnace_c + above_c, firm_c.low, firm_c.high))


def _as_kept(
    medium: Medium, workshop: Workshop, *, sent_out: bool, sprayed: bool = False
) -> tuple[KeptBath | None, Agitation]:
    """Return the workshop's own bath of a medium if it has one, and how the bath is moved."""
    # An undescribed bath is moved moderately, one that a coil sprays strikes hard. The air of a
    # workshop is still; the vacuum furnace of a firm blows gas under pressure. Common practice.
    kept = next((bath for bath in workshop.bath if bath.medium == medium.slug), None)
    if kept is not None and not sent_out:
        return kept, kept.agitation
    if medium.kind != "air":
        return None, "strong" if sprayed else "moderate"
    return None, "violent" if sent_out else "none"


def severity(medium: Medium, workshop: Workshop, *, sent_out: bool = False) -> Span:
    """Return how hard a medium quenches in this workshop's bath.

    Parameters
    ----------
    medium : Medium
        What it is quenched in.
    workshop : Workshop
        Its baths.
    sent_out : bool, optional
        Whether a firm does it, in a bath of its own.

    Returns
    -------
    Span
        Grossmann's severity at the agitation of the bath, or at the nearest one published.
        [1/in]
    """
    _, agitation = _as_kept(medium, workshop, sent_out=sent_out)
    return medium.severity_per_in[_stated_motion(medium, agitation)]


@per_record(256)
def quench(
    medium: Medium,
    workshop: Workshop,
    mass_kg: float,
    *,
    sent_out: bool = False,
    sprayed: bool = False,
) -> Quench:
    """Return the quench in this workshop's bath, as warm as it is and as the part makes it.

    Parameters
    ----------
    medium : Medium
        What it is quenched in.
    workshop : Workshop
        Its baths, and how quick the operator is.
    mass_kg : float
        Mass of the hot part. [kg]
    sent_out : bool, optional
        Whether a firm does it, in a bath of its own.
    sprayed : bool, optional
        Whether it is sprayed on as the heat leaves, as behind a coil.

    Returns
    -------
    Quench
        As warm as usual where nobody says how warm the bath is. A medium whose severity is not
        that of the shipped one of its kind, for which the boiling curve is described, is keener
        by their ratio.
    """
    kept, agitation = _as_kept(medium, workshop, sent_out=sent_out, sprayed=sprayed)
    motion = _stated_motion(medium, agitation)
    span = medium.severity_per_in[motion]
    # The catalogue's band as plus and minus one sd; no bath is known better than by 13 %.
    log_sd = 0.5 * np.log(max(span.high / span.low, 1.3))
    bath = None
    if medium.kind not in CHARTED:
        usual = load_catalog().media[medium.kind]
        keenness = _middle(span) / _middle(usual.severity_per_in[_stated_motion(usual, motion)])
        bath = Bath(medium.kind, None, agitation, keenness)  # type: ignore[arg-type]
        if kept is not None:
            bath = replace(bath, temperature_c=_in_use_c(bath, kept, mass_kg))
    return Quench(bath, _middle(span), float(log_sd), DELAY_S * workshop.skill.delay)


def _stated_motion(medium: Medium, agitation: Agitation) -> Agitation:
    """Return the motion whose severity stands for one: itself, or an end of the table."""
    if agitation in medium.severity_per_in:
        return agitation
    mildest_first = sorted(medium.severity_per_in, key=get_args(Agitation).index)
    return mildest_first[-1 if agitation in {"strong", "violent"} else 0]


def _middle(severity_per_in: Span) -> float:
    """Return the severity between its limits, on logarithms. [1/in]."""
    return float(np.sqrt(severity_per_in.low * severity_per_in.high))


def _in_use_c(bath: Bath, kept: KeptBath, mass_kg: float) -> float | None:
    """Return how warm a bath is while it quenches: between its start and its end. [°C]."""
    if kept.volume is None or bath.medium == "air":
        return kept.temperature
    start = bath_temperature_c(replace(bath, temperature_c=kept.temperature))
    end = float(bath_end_c(mass_kg, HOT_PART_C, kept.volume, start, bath.medium))
    # To a degree, so that parts of one workshop share their quenches.
    return min(round(0.5 * (start + end)), hottest_in_use_c(bath.medium))


def temper_peak_c(temper: Temper, workshop: Workshop, normals: Normals) -> Floats:
    """Return what a temper really reaches, over the sample; shape (samples, 1). [°C]."""
    misread, skill = TEMPER_ERROR[temper.means], workshop.skill
    lasting = 0.6 if "oven-thermometer" in workshop.measure else 1.0
    error = misread.bias_c * lasting * skill.bias * normals["temper_bias"]
    error = error + misread.scatter_c * skill.scatter * normals["temper_scatter"]
    return np.asarray((temper.temperature_c + error)[:, None])
