"""Whether a bath suits what is dipped into it: not too harsh for a hot zone, not too small."""

from selector.gate import Gate
from selector.job.geometry import mass_kg
from selector.job.job import Job
from selector.job.process import OIL_L_PER_KG
from selector.job.treatment import Treatment

# Above this an alloyed steel may crack where a hot zone is dipped. Common practice. [wt %]
LOCAL_DIP_CARBON_WT_PCT = 0.35
# A bath of less than this share of the oil wanted is refused, a larger one told. Estimate.
LEAST_BATH_SHARE = 0.5


def bath_gates(treatment: Treatment, job: Job) -> list[Gate]:
    """Return what the bath of a treatment leaves in doubt.

    Parameters
    ----------
    treatment : Treatment
        What is quenched in what.
    job : Job
        Part and workshop.

    Returns
    -------
    list of Gate
        Empty where the bath suits, or a firm quenches.
    """
    if treatment.medium is None or treatment.route.place != "workshop":
        return []
    found = (_local_dip(treatment), _size(treatment, job))
    return [gate for gate in found if gate is not None]


def _local_dip(treatment: Treatment) -> Gate | None:
    """Judge a dip of a hot zone of alloyed steel: neither a flat yes nor a flat no."""
    medium, hardened = treatment.medium, treatment.steel.hardened
    carbon = treatment.steel.composition_wt_pct.get("C")
    if medium is None or hardened is None or carbon is None:
        return None
    alloyed = hardened.quench != "water" and carbon.middle > LOCAL_DIP_CARBON_WT_PCT
    watery = medium.severity_class == "water"
    if not alloyed or not watery or treatment.route.extent != "local":
        return None
    text = "a hot zone of alloyed steel: warm water, polymer or oil, and a coupon first"
    return Gate("medium", "marginal", text)


def _size(treatment: Treatment, job: Job) -> Gate | None:
    """Judge a bath of oil by what goes into it: one too small overheats and may burn."""
    medium, part = treatment.medium, job.asked.part
    if medium is None or not medium.is_oil:
        return None
    kept = [bath for bath in job.asked.workshop.bath if bath.medium == medium.slug]
    if not kept or kept[0].volume is None:
        return None
    local = treatment.route.extent == "local"
    hot_kg = mass_kg(part, job.hard if local else None)
    volume, needed = kept[0].volume, OIL_L_PER_KG * hot_kg
    if volume >= needed:
        return None
    text = (
        f"{volume:g} l of {medium.name.lower()} are too few for {hot_kg:.2g} kg of hot steel: "
        f"{needed:.1f} l, or it overheats and may burn"
    )
    small = volume < LEAST_BATH_SHARE * needed
    return Gate("medium", "fail" if small else "marginal", text)
