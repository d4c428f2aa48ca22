"""The cautions that belong to an advice: those of part, rack, baths and leading options."""

from catalog.caution import Caution
from selector.advice.advise import Advice
from selector.option.caution import TOO_HARSH, by_step, of_option, of_steel
from selector.option.mildest_bath import is_too_harsh

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
    for racked in advice.job.bench.stock:
        ids += of_steel(racked.steel)
        if racked.steel.kind == "unknown":
            ids += ["unknown-steel-coupon", "chrome-fume", "cast-iron-quench"]
    return ids


def _of_baths(advice: Advice, top: int) -> list[str]:
    """Return the caution id of a water bath that is at hand for a steel not meant for it."""
    steels = [racked.steel for racked in advice.job.bench.stock]
    steels += [option.treatment.steel for option in advice.options[:top]]
    if not advice.options:
        steels += [r.treatment.steel for r in advice.rejected if r.gate.name == "cracking"]
    media = advice.job.bench.media
    harsh = any(is_too_harsh(steel, medium) for steel in steels for medium in media)
    return [TOO_HARSH] if harsh else []


def cautions(advice: Advice, top: int = 3) -> tuple[tuple[str, Caution], ...]:
    """Return the cautions of part and first `top` options by step, local codes always."""
    known = advice.job.catalog.cautions
    ids = [*_of_part(advice), *_of_stock(advice), *_of_baths(advice, top)]
    for option in advice.options[:top]:
        ids += of_option(advice.asked, option.judged.prediction)
    ids.append("local-codes")
    return by_step(ids, known)
