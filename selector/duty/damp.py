"""What custom makes of heat and damp: hot-work steel, what stands weather, what is greased."""

from catalog.steel import Steel
from selector.duty.merit import ALSO, CUTS, NEVER, SELDOM, USUAL
from selector.duty.named_duty import Duty
from selector.job.treatment import Treatment
from selector.job.window_table import HOT_C
from selector.kept import per_record
from selector.requirement import Requirement

# Where it is damp a slim part is rather taken of what does not rust; a thicker one is greased,
# blacked or painted. Common practice. [mm]
OILED_MM = 16.0
_STANDS = {"none": 0.0, "mild": 0.0, "good": 0.7, "chloride": 1.0}
# An edge of stainless steel is rinsed and dried; what stands brine takes no edge.
_WET_EDGE = {"none": 0.0, "mild": 0.8, "good": 1.0, "chloride": 1.0}
# What works hot is of hot-work steel, or of high-speed steel where it cuts; smiths make do with
# spring and alloy steel. What is made for cold work is soft in no time. [-]
_HOT_WORK = {"hot-work-tool": USUAL, "high-speed": SELDOM}
_COLD_WORK = frozenset({"water-tool", "oil-tool", "high-carbon", "bearing"})
# Up to this steel of each resistance keeps its skin in hot air, heated now and then: alloy
# steel, 420, 304 and 316; from memory of the limits of the ASM Specialty Handbook on stainless
# steels. Plain steel creeps before: bolts of it serve to 400 °C (from memory of EN 10269). [°C]
_SCALES_C = {"none": 540.0, "mild": 735.0, "good": 870.0, "chloride": 870.0}
_CREEPS_C = 400.0
_PLAIN = frozenset(
    {"mild", "free-cutting", "medium-carbon", "case-hardening", "water-tool", "high-carbon"}
)


def weakens_c(steel: Steel) -> float:
    """Return above which heat of service a steel creeps under load, or scales away. [°C]."""
    return _CREEPS_C if steel.kind in _PLAIN else _SCALES_C[steel.corrosion]


def where_hot(merit: float, duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return the merit as it is where steel works hot: dies and tools of steel made for it."""
    service = asked.limit.service_temperature
    if service is None or service < HOT_C:
        return merit
    if duty == "plain":
        return merit * SELDOM if service > weakens_c(work.steel) else merit
    if work.steel.kind in _COLD_WORK:
        return NEVER
    best = _HOT_WORK.get(work.steel.kind)
    return min(merit, SELDOM) if best is None else max(merit, best) if work.hardens else merit


def where_wet(merit: float, duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return the merit as it is where corrosion counts."""
    stands = work.steel.corrosion
    if asked.limit.corrosion == "severe":
        if duty in CUTS:
            return _WET_EDGE[stands] * merit
        return _STANDS[stands] * max(merit, ALSO)
    if _better_stainless(asked) and stands != "none":
        return max(merit, ALSO)
    return merit


def rusts(work: Treatment, asked: Requirement) -> bool:
    """Return whether a part would rust in use that is too slim for its rust not to matter."""
    # Where lives depend on it, strength goes before rust.
    critical = asked.safety_critical
    return not critical and _better_stainless(asked) and work.steel.corrosion == "none"


def is_run_on(asked: Requirement) -> bool:
    """Return whether a part is slid or rolled on, so that rust takes its fit."""
    # An edge is wiped, and what nothing runs on is painted.
    return any(zone.wear in {"sliding", "rolling-contact"} for zone in asked.zone)


def _better_stainless(asked: Requirement) -> bool:
    """Return whether a part is used in the damp and too slim for its rust not to matter."""
    # A spring is painted or greased however thin it is: little rubs on it. What works the
    # ground is rubbed bright by it.
    kept = asked.is_spring or asked.works_ground
    return asked.limit.corrosion != "none" and thickest_mm(asked) <= OILED_MM and not kept


@per_record(64)
def thickest_mm(asked: Requirement) -> float:
    """Return the thickest section: a ring counts by its wall, a disc by height. [mm]."""
    thick = max(s.narrowest_mm - (s.bore or 0.0) for s in asked.part.section)
    return min(thick, asked.part.length_mm)
