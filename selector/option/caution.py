"""The cautions that an option brings with it, each from the one list, by step of the work."""

import re
from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate
from typing import get_args

from catalog.caution import Caution, Step
from catalog.steel import Limitation, Steel
from selector.duty.strength import has_load
from selector.figure import median
from selector.job.bath_check import is_too_harsh
from selector.job.job import Job
from selector.job.ready_hard import is_wire
from selector.job.treatment import FLAMES, LAID_ON, Temper, Treatment, is_torched
from selector.option.prediction import Prediction, embrittled
from selector.option.skin import GRINDERS
from selector.option.spring_energy import maims
from selector.option.torched import meant_torched
from selector.requirement import Requirement

STEPS = get_args(Step)
# Cautions of a steel that concern only a temper from this temperature up: slow cooling from it
# passes through the range that embrittles. [°C]
SLOW_COOL = "temper-embrittlement-slow-cool"
FROM_TEMPER_C = {SLOW_COOL: 375.0}
# Plated or pickled above this hardness steel needs baking (ASTM B850-98). [HRC]
HYDROGEN_FROM_HRC = 39.0
# Steels that keep their hardness at the heat of cutting.
HOT_HARD = frozenset({"high-speed", "hot-work-tool"})
# Steels that keep austenite when hardened, which some cool below zero for.
COOLED_BY_SOME = frozenset({"air-tool", "bearing", "martensitic-stainless"})
# A thinner edge or wall overheats in a moment as it is tempered. Common practice. [mm]
THIN_MM = 4.0
# A part from this mass up is hard to get right under in one go. Common practice. [kg]
MASSIVE_KG = 0.5
# Steels hardened from higher up look orange at their right heat. [°C]
RED_HEAT_C = 900.0
# So far past a place that is heated by another than a known flame it still gets hot. [mm]
NEAR_MM = 10.0
TOO_HARSH, OWN_BATH_HARSH = "water-for-oil-steel", "harsh-bath"
WHOLE_INTO_BATH = "quench-enter-edge-first"
OIL_FIRES = frozenset({"oil-fire", "fire-extinguisher", "vegetable-oil-fire"})
AT_WATER_LINE, OIL_FIRE = "keep-moving-at-water-line", "oil-fire"
BY_MEANS = {
    "oven": ("kitchen-oven-fumes",),
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
# A bar nobody can name may be any of these.
OF_SCRAP = (
    "unknown-steel-coupon", "chrome-fume", "cadmium", "cast-iron-quench", "scrap-sealed",
)  # fmt: skip
# A part that must run as true as this is lapped or ground to a fit, which a bar as sold is not
# sure to have. Common practice. [mm]
FINE_RUNOUT_MM = 0.02
BOLT_LIKE = frozenset({"hard", "welded"})
LOADED_SPRING = "spring-under-load"
BY_SHAPE = {"coil-spring": ("hardened-spring-reheat",)}
SOFT_HEAD, HARD_FACE = "struck-head-chips", "hard-face-struck"
# What is longer than so many times it is wide is struck at its other end. Estimate. [-]
_HEADED = 1.5


_WELDED = re.compile(r"\bweld(?:ed)?(?:[- ](?:on|in))?\b", re.IGNORECASE)


def _is_welded(asked: Requirement) -> bool:
    """Return whether a part is or will be welded, by its state, its features or its name."""
    seamed = any(feature.kind == "weld" for feature in asked.part.feature)
    named = _WELDED.search(asked.part.name) is not None
    return asked.part.condition == "welded" or seamed or named


def _concerns(limit: Limitation, work: Treatment, *, welded: bool) -> bool:
    """Return whether a limitation of a steel is about what an option does with it."""
    flamed = work.source is not None and work.source.kind in FLAMES
    return {
        "any": True,
        "torch": work.hardens and flamed,
        "quench": work.hardens,
        "case": work.route.process == "case",
        "nitride": work.route.process == "nitride",
        "weld": welded,
        "cold-work": False,
    }[limit.process]


def of_steel(work: Treatment, temper: Temper, *, welded: bool) -> list[str]:
    """Return the caution ids of a steel that belong to what is done with it."""
    tempered_c = temper.temperature_c if temper.means != "none" else -1.0
    return [
        limit.caution
        for limit in work.steel.limitation
        if limit.caution is not None
        and _concerns(limit, work, welded=welded)
        and tempered_c >= FROM_TEMPER_C.get(limit.caution, -1.0)
    ]


def of_option(job: Job, prediction: Prediction) -> list[str]:
    """Return the caution ids that an option brings with it."""
    asked, work, temper = job.asked, prediction.treatment, prediction.temper
    ids = [*work.route.cautions, *of_steel(work, temper, welded=_is_welded(asked))]
    if work.source is not None:
        ids += work.source.cautions
    if work.medium is not None and work.route.place == "workshop":
        ids += _of_bath(job, work)
    if embrittled(work, temper) or (work.steel.embrittlement_c and work.hardens):
        ids.append("temper-window-alloy")
    tires = asked.load.cycles == "fatigue" and not is_wire(work.condition)
    if work.hardens or tires:
        ids.append("sharp-notch-quench")
    if work.hardens:
        ids += _of_hardening(asked, work)
    if work.route.place == "workshop":
        ids += _of_heat(asked, work)
    ids += [*_of_finish(asked, prediction), *_of_temper(job, work, temper)]
    if work.route.extent == "local":
        # What is said of a whole part going in is no advice for an end or a zone.
        ids = [key for key in ids if key != WHOLE_INTO_BATH]
    return list(dict.fromkeys(ids))


def _of_temper(job: Job, work: Treatment, temper: Temper) -> list[str]:
    """Return the caution ids of what a part is tempered by."""
    if temper.means == "blaze" and work.medium is not None:
        # What is burnt off is the oil of the bath, and is put out as that is.
        return [key for key in work.medium.cautions if key in OIL_FIRES]
    sources = job.bench.sources
    if temper.means == "furnace" and not any(s.kind == "furnace" for s in sources):
        # A salt pot is the furnace of whoever has no other.
        return [key for s in sources if s.kind == "salt-bath" for key in s.cautions]
    return list(BY_MEANS.get(temper.means, ()))


def _of_bath(job: Job, work: Treatment) -> list[str]:
    """Return the caution ids of a workshop's bath that belong to how the part goes into it."""
    assert work.medium is not None  # noqa: S101 - the caller has looked
    ids, oily = list(work.medium.cautions), OIL_FIRE in work.medium.cautions
    local, ends = work.route.extent == "local", "residual" in work.route.temper
    if not local and AT_WATER_LINE in ids:
        ids.remove(AT_WATER_LINE)
    if oily and ends:
        # "Right under" is no advice for an end that is quenched by itself.
        ids[ids.index(OIL_FIRE)] = "end-dip-oil"
    elif oily and job.mass_kg >= MASSIVE_KG:
        ids.append("half-dip-oil")
    if is_too_harsh(work.steel, work.medium):
        ids.append(OWN_BATH_HARSH)
    if work.hardens and _has_hot_hole(job, work):
        ids.append("plug-holes")
    return ids


def _has_hot_hole(job: Job, work: Treatment) -> bool:
    """Return whether a cross-hole lies where the part is heated."""
    holes = [f for f in job.asked.part.feature if f.kind == "cross-hole"]
    if not holes or work.route.extent == "whole":
        return bool(holes)
    past_mm = meant_torched(job, work).set_up.past_mm if is_torched(work) else NEAR_MM
    ends = [0.0, *accumulate(section.length for section in job.asked.part.section)]
    heated = [(ends[n] - past_mm, ends[n + 1] + past_mm) for n in job.hard]
    return any(
        job.asked.part.place(hole) in job.hard
        if hole.at is None
        else any(low <= hole.at <= high for low, high in heated)
        for hole in holes
    )


def _of_heat(asked: Requirement, work: Treatment) -> list[str]:
    """Return the caution ids of making a part hot in the workshop."""
    ids = ["phosgene", "burn-first-aid"]
    if _is_welded(asked) and any(section.bore for section in asked.part.section):
        ids.append("sealed-hollow")
    if work.source is not None and work.source.kind in FLAMES:
        ids.append("hot-on-concrete")
    if work.route.cold_c is not None or (work.hardens and work.steel.kind in COOLED_BY_SOME):
        ids.append("deep-cold")
    return ids


def _of_hardening(asked: Requirement, work: Treatment) -> list[str]:
    """Return the caution ids of shaping, heating and tempering a part that is hardened."""
    ids, shop = ["finish-after-heat"], asked.workshop
    known = work.steel.hardened
    if work.by_eye:
        ids += ["dim-light"] if shop.light != "dim" else []
        ids += ["curie-not-target"] if "magnet" in shop.measure else []
        if known is not None and known.temperature_c.high <= RED_HEAT_C:
            ids.append("overheated-grain")
    if work.source is not None and work.source.kind in FLAMES:
        ids.append("shield-the-flame")
    thin = min(section.size for section in asked.part.section) <= THIN_MM
    own = work.route.place == "workshop"
    if own and (len(asked.zone) > 1 or thin or work.route.extent == "local"):
        ids.append("temper-by-zone")
    cuts = any(zone.wear == "abrasive" for zone in asked.zone)
    if cuts and work.steel.kind not in HOT_HARD:
        ids.append("edge-runs-hot")
    return ids


def _of_finish(asked: Requirement, prediction: Prediction) -> list[str]:
    """Return the caution ids of grinding, pickling, plating and blacking a part after heat."""
    work, part = prediction.treatment, asked.part
    rusts = asked.limit.corrosion != "none" and work.steel.corrosion == "none"
    hard = median(prediction.surface_hrc) > HYDROGEN_FROM_HRC
    ids = ["hydrogen-embrittlement"] if hard and (part.condition == "plated" or rusts) else []
    ids += ["blacking-salt"] if rusts else []
    grinds = GRINDERS & set(part.finish_after) and work.route.process not in LAID_ON
    return ids + (["grinding-dust", "grinding-cracks"] if hard and grinds else [])


def by_step(
    ids: Iterable[str], known: Mapping[str, Caution]
) -> tuple[tuple[str, Caution], ...]:
    """Return cautions once each with their ids, in the order of the work."""
    once = {key: known[key] for key in dict.fromkeys(ids)}
    return tuple(sorted(once.items(), key=lambda item: STEPS.index(item[1].step)))


def _has_soft_head(asked: Requirement) -> bool:
    """Return whether a struck part has a head besides the face or edge that is to be hard."""
    worn = {place for zone in asked.zone if zone.wear != "none" for place in zone.section}
    beside = len(worn) < len(asked.part.section)
    widest = max(section.across_mm for section in asked.part.section)
    return beside or asked.is_edged or asked.part.length_mm > _HEADED * widest


def of_part(asked: Requirement) -> list[str]:
    """Return the caution ids that part and use bring with them."""
    ids = [
        *BY_CONDITION.get(asked.part.condition, ()),
        *BY_SHAPE.get(asked.part.shape_class, ()),
        *(("stronger-shear-pin",) if asked.is_to_break else ()),
    ]
    coiled = asked.part.shape_class == "coil-spring"
    if (coiled or (asked.is_spring and has_load(asked.load))) and maims(asked):
        ids.append(LOADED_SPRING)
    if asked.safety_critical:
        ids.append("lifting-brakes-pressure")
    if asked.load.impact == "hammered" and not asked.safety_critical:
        ids.append(SOFT_HEAD if _has_soft_head(asked) else HARD_FACE)
    if asked.limit.runout is not None and asked.limit.runout <= FINE_RUNOUT_MM:
        ids.append("bar-out-of-round")
    if _is_welded(asked):
        ids.append("weld-hardened")
    # What is threaded and welded or hard already may well be a bolt.
    threaded = any(feature.kind == "thread" for feature in asked.part.feature)
    if threaded and (_is_welded(asked) or asked.part.condition in BOLT_LIKE):
        ids.append("welding-high-strength-bolt")
    return ids


def of_stock(asked: Requirement, stock: Iterable[Steel]) -> list[str]:
    """Return the caution ids that bars bring with them, whatever is done with them."""
    ids: list[str] = []
    for steel in stock:
        ids += [
            limit.caution
            for limit in steel.limitation
            if limit.caution is not None
            and limit.caution not in FROM_TEMPER_C
            and (limit.process != "weld" or _is_welded(asked))
        ]
        if steel.kind == "unknown":
            ids += OF_SCRAP
    return ids


def cautions(
    job: Job, outcomes: Sequence[Prediction], refused: Iterable[Steel] = ()
) -> tuple[tuple[str, Caution], ...]:
    """Return the cautions of a part, its rack and some options for it, by step of the work."""
    asked, racked = job.asked, [bar.steel for bar in job.bench.stock]
    hardened = [o.treatment.steel for o in outcomes if o.treatment.hardens]
    # Where nothing is going to be quenched, no bath tempts.
    tempts = not asked.safety_critical and (hardened or not outcomes)
    steels = [*racked, *hardened, *refused] if tempts else []
    ids = [*of_part(asked), *of_stock(asked, racked)]
    # A water bath that is at hand for a steel not meant for it tempts.
    if any(is_too_harsh(steel, medium) for steel in steels for medium in job.bench.media):
        ids.append(TOO_HARSH)
    for outcome in outcomes:
        ids += of_option(job, outcome)
    # What one option is advised to do is not warned of in the next line.
    if OWN_BATH_HARSH in ids and TOO_HARSH in ids:
        ids.remove(TOO_HARSH)
    ids.append("local-codes")
    return by_step(ids, job.catalog.cautions)
