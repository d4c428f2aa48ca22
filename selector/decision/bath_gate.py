"""Whether a bath suits the part: not too harsh for a hot zone, not too small."""

from selector.gate import Gate
from selector.job.bath_check import too_mild_mm
from selector.job.geometry import mass_kg
from selector.job.hard_section import hard_sections
from selector.job.process import OIL_L_PER_KG
from selector.job.screening import is_pressed
from selector.job.treatment import Treatment
from selector.kept import per_record
from selector.requirement import Requirement
from selector.wording import in_sentence

# Alloyed steel of more carbon may crack where only its hot zone is quenched. Common practice.
# [wt %]
LOCAL_QUENCH_CARBON_WT_PCT = 0.35
# A bath below this share of the oil needed is refused; up to the full volume it is marginal.
# Estimate.
LEAST_BATH_SHARE = 0.5


def bath_gates(treatment: Treatment, asked: Requirement) -> list[Gate]:
    """Return what the bath of a treatment leaves in doubt; nothing where a firm quenches."""
    if treatment.medium is None or treatment.route.place != "workshop":
        return []
    gates = (_local_quench(treatment), _mild(treatment, asked), _size(treatment, asked))
    return [gate for gate in gates if gate is not None]


def _local_quench(treatment: Treatment) -> Gate | None:
    """Judge a hot zone of alloyed steel that is quenched in water: marginal."""
    medium, hardened = treatment.medium, treatment.steel.hardened
    carbon = treatment.steel.composition_wt_pct.get("C")
    if medium is None or hardened is None or carbon is None:
        return None
    alloyed = hardened.quench != "water" and carbon.middle > LOCAL_QUENCH_CARBON_WT_PCT
    watery = medium.severity_class == "water"
    if not alloyed or not watery or treatment.route.extent != "local":
        return None
    text = "a hot zone of alloyed steel: warm water, polymer or oil, and a coupon first"
    return Gate("medium", "marginal", text)


def _mild(treatment: Treatment, asked: Requirement) -> Gate | None:
    """Judge a bath milder than the steel is made for: oil on a thick part, plates at all."""
    if is_pressed(treatment):
        text = "made for oil: between plates it hardens where they touch, through foil in spots"
        return Gate("medium", "marginal", text)
    limit_mm = too_mild_mm(asked, treatment)
    if limit_mm is None or treatment.medium is None:
        return None
    bath = in_sentence(treatment.medium.name)
    text = f"made for water; {bath} hardens it to about {limit_mm:g} mm, thicker in spots"
    return Gate("medium", "marginal", text)


@per_record(64)
def _hot_kg(asked: Requirement, *, local: bool) -> float:
    """Return the mass of hot steel that goes into the bath. [kg]."""
    return mass_kg(asked.part, hard_sections(asked) if local else None)


def _size(treatment: Treatment, asked: Requirement) -> Gate | None:
    """Judge a bath of oil by the hot steel that goes into it."""
    medium = treatment.medium
    if medium is None or not medium.is_oil:
        return None
    volume = next((b.volume for b in asked.workshop.bath if b.medium == medium.slug), None)
    hot_kg = _hot_kg(asked, local=treatment.route.extent == "local")
    needed = OIL_L_PER_KG * hot_kg
    if volume is None or volume >= needed:
        return None
    text = (
        f"{volume:g} l of {in_sentence(medium.name)} are too few for {hot_kg:.2g} kg of hot "
        f"steel: {needed:.1f} l, or it overheats and may burn"
    )
    small = volume < LEAST_BATH_SHARE * needed
    return Gate("medium", "fail" if small else "marginal", text)
