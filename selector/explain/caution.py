"""The cautions that belong to this advice, each from the one list, in the order of the work."""

from catalog.caution import Caution
from selector.advice import Advice, Option
from selector.prediction import embrittled

STEPS = ("before work", "heating", "quenching", "tempering", "finishing", "in service")


def _of_option(option: Option) -> list[str]:
    """Return the caution ids an option brings with it."""
    work = option.treatment
    ids = [*work.route.cautions]
    if work.medium is not None and work.route.place == "workshop":
        ids += work.medium.cautions
    if work.source is not None:
        ids += work.source.cautions
    ids += [limit.caution for limit in work.steel.limitation if limit.caution]
    if embrittled(work, option.choice.temper):
        ids.append("temper-window-alloy")
    if work.steel.embrittlement_c and work.hardens:
        ids.append("temper-window-alloy")
    if option.choice.temper.means == "oven":
        ids.append("kitchen-oven-fumes")
    if option.choice.temper.means == "blaze":
        ids += ["oil-fire", "fire-extinguisher"]
    if option.choice.temper.means in {"torch", "residual", "plate"}:
        ids.append("thermometer-not-colour")
    return ids


def _of_part(advice: Advice) -> list[str]:
    """Return the caution ids that part, use and stock bring with them."""
    asked, ids = advice.asked, []
    if asked.safety_critical:
        ids.append("lifting-brakes-pressure")
    if asked.load.impact == "hammered":
        ids.append("struck-head-chips")
    by_condition = {
        "plated": ["plated-stock-strip", "zinc-fume", "chrome-fume"],
        "hard": ["anneal-before-requench"],
        "welded": ["weld-hardened"],
        "finished": ["grinding-cracks"],
    }
    ids += by_condition.get(asked.part.condition, [])
    if asked.part.shape_class == "coil-spring":
        ids += ["spring-under-load", "hardened-spring-reheat"]
    for _, steel in advice.around.bench.stock:
        ids += [limit.caution for limit in steel.limitation if limit.caution]
        if steel.kind == "unknown":
            ids += ["unknown-steel-coupon", "chrome-fume"]
    return ids


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
    known = advice.around.catalog.cautions
    ids = _of_part(advice)
    for option in advice.options[:top]:
        ids += _of_option(option)
    ids.append("local-codes")
    found = {key: known[key] for key in dict.fromkeys(ids) if key in known}
    return tuple(sorted(found.items(), key=lambda item: STEPS.index(item[1].step)))
