"""The cautions that belong to this advice, each from the one list, in the order of the work."""

from catalog.caution import Caution
from catalog.steel import Steel
from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.figure import median
from selector.job.treatment import Temper, Treatment
from selector.option.mildest_bath import is_too_harsh
from selector.option.prediction import embrittled
from selector.requirement import Requirement

STEPS = ("before work", "heating", "quenching", "tempering", "finishing", "in service")
# Cautions of a steel that concern only a draw from this temperature up: slow cooling passes
# through the range where it harms. [°C]
FROM_DRAW_C = {"temper-embrittlement-slow-cool": 375.0}
# Plated or pickled above this hardness steel needs baking (ASTM B850-98). [HRC]
HYDROGEN_FROM_HRC = 39.0
BY_CONDITION = {
    "plated": ("plated-stock-strip", "zinc-fume", "chrome-fume", "cadmium"),
    "hard": ("anneal-before-requench",),
    "welded": ("weld-hardened",),
    "finished": ("grinding-cracks",),
}
# Steels that keep their hardness at the heat of cutting.
HOT_HARD = frozenset({"high-speed", "hot-work-tool"})
# Thinner than this an edge or wall is overdrawn in a moment. Common practice. [mm]
THIN_MM = 4.0
# A part that must run as true as this is lapped or ground to a fit, which a bar as sold is not
# sure to have. Common practice. [mm]
FINE_RUNOUT_MM = 0.02
TOO_HARSH = "water-for-oil-steel"
BOLT_LIKE = frozenset({"hard", "welded"})
BY_SHAPE = {"coil-spring": ("spring-under-load", "hardened-spring-reheat")}
BY_MEANS = {
    "oven": ("kitchen-oven-fumes",),
    "blaze": ("oil-fire", "fire-extinguisher"),
    "torch": ("thermometer-not-colour", "gas-cylinders-flashback"),
    "residual": ("thermometer-not-colour",),
    "plate": ("thermometer-not-colour",),
}


def _of_steel(steel: Steel, temper: Temper | None) -> list[str]:
    """Return the caution ids of a steel, at the draw it gets if it gets one."""
    drawn_c = temper.temperature_c if temper is not None and temper.means != "none" else -1.0
    return [
        limit.caution
        for limit in steel.limitation
        if limit.caution is not None and drawn_c >= FROM_DRAW_C.get(limit.caution, -1.0)
    ]


def of_option(asked: Requirement, option: Option) -> list[str]:
    """Return the caution ids an option brings with it.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    option : Option
        What is done.

    Returns
    -------
    list of str
        Ids of the one list of cautions.
    """
    work, temper = option.treatment, option.choice.temper
    ids = [*work.route.cautions]
    if work.medium is not None and work.route.place == "workshop":
        ids += work.medium.cautions
    if work.source is not None:
        ids += work.source.cautions
    ids += _of_steel(work.steel, temper)
    if is_too_harsh(work.steel, work.medium):
        ids.append(TOO_HARSH)
    if embrittled(work, temper) or (work.steel.embrittlement_c and work.hardens):
        ids.append("temper-window-alloy")
    if work.hardens or asked.load.cycles == "fatigue":
        ids.append("sharp-notch-quench")
    if work.hardens:
        ids += _of_hardening(asked, work)
    if _takes_hydrogen(asked, option):
        ids.append("hydrogen-embrittlement")
    return [*ids, *BY_MEANS.get(temper.means, ())]


def _of_hardening(asked: Requirement, work: Treatment) -> list[str]:
    """Return the caution ids of shaping, heating and drawing a part that is hardened."""
    ids = ["finish-after-heat"]
    if work.by_eye:
        ids.append("dim-light")
    if work.source is not None and work.source.kind in {"flame", "fire"}:
        ids.append("shield-the-flame")
    thin = min(section.size for section in asked.part.section) <= THIN_MM
    if len(asked.zone) > 1 or thin or work.route.extent == "local":
        ids.append("draw-by-zone")
    cuts = any(zone.wear == "abrasive" for zone in asked.zone)
    if cuts and work.steel.kind not in HOT_HARD:
        ids.append("edge-runs-hot")
    return ids


def _takes_hydrogen(asked: Requirement, option: Option) -> bool:
    """Return whether hard steel is stripped of plating, or likely to be plated against rust."""
    steel = option.treatment.steel
    rusts = asked.limit.corrosion != "none" and steel.corrosion == "none"
    hrc = median(option.judged.prediction.surface_hrc)
    return hrc > HYDROGEN_FROM_HRC and (asked.part.condition == "plated" or rusts)


def _of_part(advice: Advice) -> list[str]:
    """Return the caution ids that part and use bring with them."""
    asked = advice.asked
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


def _of_stock(advice: Advice) -> list[str]:
    """Return the caution ids that the bars in the rack bring with them."""
    ids: list[str] = []
    for _, steel in advice.job.bench.stock:
        ids += _of_steel(steel, None)
        if steel.kind == "unknown":
            ids += ["unknown-steel-coupon", "chrome-fume", "cast-iron-quench"]
    return ids


def _of_baths(advice: Advice, top: int) -> list[str]:
    """Return the caution id of a water bath that is at hand for a steel not meant for it."""
    steels = [steel for _, steel in advice.job.bench.stock]
    steels += [option.treatment.steel for option in advice.options[:top]]
    if not advice.options:
        steels += [r.treatment.steel for r in advice.rejected if r.gate.name == "cracking"]
    media = advice.job.bench.media
    harsh = any(is_too_harsh(steel, medium) for steel in steels for medium in media)
    return [TOO_HARSH] if harsh else []


def cautions(advice: Advice, top: int = 3) -> tuple[tuple[str, Caution], ...]:
    """Return the cautions of part and leading options, by step of the work.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    top : int
        How many leading options to look at.

    Returns
    -------
    tuple
        Pairs of id and caution; local codes always among them.
    """
    known = advice.job.catalog.cautions
    ids = [*_of_part(advice), *_of_stock(advice), *_of_baths(advice, top)]
    for option in advice.options[:top]:
        ids += of_option(advice.asked, option)
    ids.append("local-codes")
    found = {key: known[key] for key in dict.fromkeys(ids)}
    return tuple(sorted(found.items(), key=lambda item: STEPS.index(item[1].step)))
