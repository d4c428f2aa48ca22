"""The cautions that an option brings with it, each from the one list, by step of the work."""

from collections.abc import Iterable, Mapping, Sequence
from typing import get_args

from catalog.caution import Caution, Step
from catalog.steel import Steel
from selector.figure import median
from selector.job.job import Job
from selector.job.treatment import Temper, Treatment
from selector.option.mildest_bath import is_too_harsh
from selector.option.prediction import Prediction, embrittled
from selector.requirement import Requirement

STEPS = get_args(Step)
# Cautions of a steel that concern only a temper from this temperature up: slow cooling from it
# passes through the range that embrittles. [°C]
FROM_TEMPER_C = {"temper-embrittlement-slow-cool": 375.0}
# Plated or pickled above this hardness steel needs baking (ASTM B850-98). [HRC]
HYDROGEN_FROM_HRC = 39.0
# Steels that keep their hardness at the heat of cutting.
HOT_HARD = frozenset({"high-speed", "hot-work-tool"})
# A thinner edge or wall overheats in a moment as it is tempered. Common practice. [mm]
THIN_MM = 4.0
TOO_HARSH = "water-for-oil-steel"
BY_MEANS = {
    "oven": ("kitchen-oven-fumes",),
    "blaze": ("oil-fire", "fire-extinguisher"),
    "torch": ("thermometer-not-colour", "gas-cylinders-flashback"),
    "residual": ("thermometer-not-colour",),
    "plate": ("thermometer-not-colour",),
}
BY_CONDITION = {
    "plated": ("plated-stock-strip", "zinc-fume", "chrome-fume", "cadmium"),
    "hard": ("anneal-before-requench",),
    "welded": ("weld-hardened",),
    "finished": ("grinding-cracks",),
}
# A part that must run as true as this is lapped or ground to a fit, which a bar as sold is not
# sure to have. Common practice. [mm]
FINE_RUNOUT_MM = 0.02
BOLT_LIKE = frozenset({"hard", "welded"})
BY_SHAPE = {"coil-spring": ("spring-under-load", "hardened-spring-reheat")}


def of_steel(steel: Steel, temper: Temper | None = None) -> list[str]:
    """Return the caution ids of a steel, at its temper if it has one."""
    tempered_c = temper.temperature_c if temper is not None and temper.means != "none" else -1.0
    return [
        limit.caution
        for limit in steel.limitation
        if limit.caution is not None and tempered_c >= FROM_TEMPER_C.get(limit.caution, -1.0)
    ]


def of_option(asked: Requirement, prediction: Prediction) -> list[str]:
    """Return the caution ids that an option brings with it."""
    work, temper = prediction.treatment, prediction.temper
    ids = [*work.route.cautions]
    if work.medium is not None and work.route.place == "workshop":
        ids += work.medium.cautions
    if work.source is not None:
        ids += work.source.cautions
    ids += of_steel(work.steel, temper)
    if is_too_harsh(work.steel, work.medium):
        ids.append(TOO_HARSH)
    if embrittled(work, temper) or (work.steel.embrittlement_c and work.hardens):
        ids.append("temper-window-alloy")
    if work.hardens or asked.load.cycles == "fatigue":
        ids.append("sharp-notch-quench")
    if work.hardens:
        ids += _of_hardening(asked, work)
    if _takes_hydrogen(asked, prediction):
        ids.append("hydrogen-embrittlement")
    return [*ids, *BY_MEANS.get(temper.means, ())]


def _of_hardening(asked: Requirement, work: Treatment) -> list[str]:
    """Return the caution ids of shaping, heating and tempering a part that is hardened."""
    ids = ["finish-after-heat"]
    if work.by_eye:
        ids.append("dim-light")
    if work.source is not None and work.source.kind in {"flame", "fire"}:
        ids.append("shield-the-flame")
    thin = min(section.size for section in asked.part.section) <= THIN_MM
    if len(asked.zone) > 1 or thin or work.route.extent == "local":
        ids.append("temper-by-zone")
    cuts = any(zone.wear == "abrasive" for zone in asked.zone)
    if cuts and work.steel.kind not in HOT_HARD:
        ids.append("edge-runs-hot")
    return ids


def _takes_hydrogen(asked: Requirement, prediction: Prediction) -> bool:
    """Return whether hard steel is stripped of plating, or likely to be plated against rust."""
    steel = prediction.treatment.steel
    rusts = asked.limit.corrosion != "none" and steel.corrosion == "none"
    hrc = median(prediction.surface_hrc)
    return hrc > HYDROGEN_FROM_HRC and (asked.part.condition == "plated" or rusts)


def by_step(
    ids: Iterable[str], known: Mapping[str, Caution]
) -> tuple[tuple[str, Caution], ...]:
    """Return cautions once each with their ids, in the order of the work."""
    once = {key: known[key] for key in dict.fromkeys(ids)}
    return tuple(sorted(once.items(), key=lambda item: STEPS.index(item[1].step)))


def _of_part(asked: Requirement) -> list[str]:
    """Return the caution ids that part and use bring with them."""
    ids = [
        *BY_CONDITION.get(asked.part.condition, ()),
        *BY_SHAPE.get(asked.part.shape_class, ()),
    ]
    if asked.safety_critical:
        ids.append("lifting-brakes-pressure")
    if asked.load.impact == "hammered":
        ids.append("struck-head-chips")
    if asked.limit.runout is not None and asked.limit.runout <= FINE_RUNOUT_MM:
        ids.append("bar-out-of-round")
    features = {feature.kind for feature in asked.part.feature}
    if "weld" in features:
        ids.append("weld-hardened")
    # What is threaded and welded or hard already may well be a bolt.
    if "thread" in features and ("weld" in features or asked.part.condition in BOLT_LIKE):
        ids.append("welding-high-strength-bolt")
    return ids


def _of_stock(stock: Iterable[Steel]) -> list[str]:
    """Return the caution ids that the bars in the rack bring with them."""
    ids: list[str] = []
    for steel in stock:
        ids += of_steel(steel)
        if steel.kind == "unknown":
            ids += ["unknown-steel-coupon", "chrome-fume", "cast-iron-quench"]
    return ids


def cautions(
    job: Job, outcomes: Sequence[Prediction], refused: Iterable[Steel] = ()
) -> tuple[tuple[str, Caution], ...]:
    """Return the cautions of a part and of some options for it, by step of the work."""
    known, racked = job.catalog.cautions, [bar.steel for bar in job.bench.stock]
    steels = [*racked, *(outcome.treatment.steel for outcome in outcomes), *refused]
    ids = [*_of_part(job.asked), *_of_stock(racked)]
    # A water bath that is at hand for a steel not meant for it tempts.
    if any(is_too_harsh(steel, medium) for steel in steels for medium in job.bench.media):
        ids.append(TOO_HARSH)
    for outcome in outcomes:
        ids += of_option(job.asked, outcome)
    ids.append("local-codes")
    return by_step(ids, known)
