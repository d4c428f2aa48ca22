"""Whether a heat source brings the zone to its hardening heat."""

from dataclasses import replace

from selector.figure import median
from selector.gate import Gate, judged
from selector.hardening.as_quenched import FORMED_FULL_C
from selector.job.job import Job
from selector.job.screening import heated_thickness
from selector.job.treatment import Treatment, is_torched
from selector.torch.response import torched

# Below this a heat shows no clear red. Common practice, no source. [°C]
RED_C = 700.0


def heating_gates(treatment: Treatment, job: Job) -> list[Gate]:
    """Judge the heat: by the histories of a torch where it is followed, else by its reach.

    Parameters
    ----------
    treatment : Treatment
        What is done.
    job : Job
        Part and workshop.

    Returns
    -------
    list of Gate
        None where the heat is no worry.
    """
    source, hardened = treatment.source, treatment.steel.hardened
    if source is None:
        return []
    if is_torched(treatment) and hardened is not None:
        rim_c, needed_c = torched(treatment, job).rim_c, hardened.temperature_c.low
        gate = judged("heating", rim_c >= needed_c - FORMED_FULL_C, "")
        if gate.verdict == "pass":
            return []
        at_c = median(rim_c)
        # Told in wider steps where it is far off, steels a few degrees apart read alike.
        step_c = 50 if at_c < RED_C else 10
        words = "too little to harden" if gate.verdict == "fail" else "which may not do"
        text = f"{source.name} brings the zone to about {step_c * round(at_c / step_c)} °C"
        return [replace(gate, text=f"{text}, {words}")]
    thick = heated_thickness(job.asked, treatment)
    reach = source.section_mm.value
    if thick <= reach:
        return []
    text = f"like {thick:.0f} mm round, and {source.slug} heats about {reach:g} mm"
    return [Gate("heating", "marginal", f"at the end of its reach: {text}")]
