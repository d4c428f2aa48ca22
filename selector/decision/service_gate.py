"""Whether the heat of service goes on where the last heat of the part left off."""

from selector.duty.damp import weakens_c
from selector.duty.made_of import WEAR_PLATE
from selector.gate import Gate
from selector.hardening.stock import COLDEST_TEMPER_C, TEMPERED_S
from selector.hardening.tempered import hottest_temper_c
from selector.job.ready_hard import TURNED_HRC, delivered_hrc
from selector.job.treatment import Temper, Treatment
from selector.option.temper_choice import SERVICE_MARGIN_C

# Rollers, pins and ground shafts sold hard are tempered at 150 to 180 °C, plate against wear
# little hotter: from memory of makers' sheets. [°C]
ELEMENT_TEMPER_C, WEAR_PLATE_TEMPER_C = 150.0, 200.0
# Up to this wire and strip sold hard keep their strength, whoever made them: from memory of the
# limits of patented wire, the tenderest of them. [°C]
WIRE_KEEPS_C = 120.0
# Smiths' hot tools touch the work for a blow at a time, are cooled between and redressed: drawn
# to blue they serve for all that they soften. Common practice. [°C]
BLUE_C = 300.0


def service_gate(
    work: Treatment, temper: Temper, service_c: float | None, *, struck: bool = False
) -> Gate | None:
    """Judge the heat of service; None where none is stated or nothing hard is there to lose."""
    if service_c is None:
        return None
    last_c = _last_heat_c(work, temper)
    if last_c is None:
        return _unsaid(work, service_c)
    spare = last_c - service_c
    text = f"tempered {spare:.0f} °C above service heat; {SERVICE_MARGIN_C:.0f} °C wanted"
    if spare < 0.0:
        text = f"service is {-spare:.0f} °C hotter than its last heat, so it softens"
    if spare < SERVICE_MARGIN_C and struck and work.hardens and last_c >= BLUE_C:
        return Gate("service_heat", "marginal", f"{text}: cool it between blows, redress it")
    return Gate("service_heat", "pass" if spare >= SERVICE_MARGIN_C else "fail", text)


def _last_heat_c(work: Treatment, temper: Temper) -> float | None:
    """Return the last heat that the hardness stood; None where it is soft or unknown. [°C]."""
    process, sold = work.route.process, work.condition
    if work.hardens or process in {"case", "age"}:
        return temper.temperature_c
    if process == "nitride" and work.route.temperature_c is not None:
        return work.route.temperature_c.low
    if sold.name == "hard-element":
        return ELEMENT_TEMPER_C
    if work.steel.kind == WEAR_PLATE:
        return WEAR_PLATE_TEMPER_C
    hrc = delivered_hrc(sold)
    if sold.name != "prehard" or hrc > TURNED_HRC:
        return None
    # Bar so soft may have been short of martensite; bar so hard was tempered no hotter than
    # leaves martensite as hard.
    hottest_c = hottest_temper_c(work.steel, hrc, TEMPERED_S)
    return None if hottest_c is None else min(hottest_c, COLDEST_TEMPER_C)


def _unsaid(work: Treatment, service_c: float) -> Gate | None:
    """Judge what is left soft, or sold hard after a heat that nobody states."""
    if service_c > weakens_c(work.steel):
        text = f"at {service_c:.0f} °C it creeps under load and scales: count on renewing it"
        return Gate("service_heat", "marginal", text)
    if work.condition.name != "prehard" or service_c <= WIRE_KEEPS_C:
        return None
    text = f"sold hard: ask its maker whether it keeps that at {service_c:.0f} °C"
    return Gate("service_heat", "marginal", text)
