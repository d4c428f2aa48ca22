"""The first lines of an advice: what to do, in a sentence."""

from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.decision.output import temper_out
from selector.figure import median
from selector.job.demand import Demand
from selector.job.treatment import Means, Treatment
from selector.wording import in_sentence, shown, shown_range

_BOUGHT_AS = {"hard-element": "bought ready hard"}
# What a route does, where its name in the catalogue is a heading. It ends before the bath.
_ROUTE_WORDS = {
    "through-torch": "heated all over by torch or forge",
    "through-furnace": "heated all over in a furnace",
    "local-torch": "flame-hardened locally",
}
_BY_MEANS: dict[Means, str] = {
    "oven": "in the oven",
    "furnace": "in the furnace",
    "plate": "on the hot plate",
    "torch": "by torch",
    "blaze": "by blazing off the oil",
}


def name(option: Option) -> str:
    """Return an option in words: steel, what is done to it, and temper."""
    work, temper = option.treatment, option.choice.temper
    bar = _BOUGHT_AS.get(work.condition.name, work.condition.name)
    if temper.means == "residual":
        return f"{work.steel.name} ({bar}), {_end_words(option)}"
    text = f"{work.steel.name} ({bar}), {_route_words(work)}"
    if temper.means == "none":
        return text
    return f"{text}, tempered at {temper.temperature_c:.0f} °C {_BY_MEANS[temper.means]}"


def _route_words(work: Treatment) -> str:
    """Return what is done with the bar, with the bath of the workshop where there is one."""
    text = _ROUTE_WORDS.get(work.route.slug, in_sentence(work.route.name))
    if work.medium is None or work.route.place != "workshop":
        return text
    quenched = ", quenched" if work.route.slug in _ROUTE_WORDS else ""
    return f"{text}{quenched} in {_bath(work)}"


def _end_words(option: Option) -> str:
    """Return how an end is quenched and tempered by the heat left behind it."""
    bath, temper = _bath(option.treatment), temper_out(option.choice)
    shade = temper.colour or f"{temper.temperature_c:.0f} °C"
    return f"the end quenched in {bath}, the colour let run down and quenched out at {shade}"


def _bath(work: Treatment) -> str:
    """Return the bath of a treatment in words."""
    return work.medium.slug.replace("-", " ") if work.medium else "air"


def headline(advice: Advice) -> str:
    """Return what to do, in one or two sentences."""
    verdict = advice.verdict
    if verdict == "safety_referral":
        use = advice.asked.safety_use
        first = f" If bar will do: {name(advice.options[0])}." if advice.options else ""
        return (
            f"{use[0].upper()}{use[1:]} part: not a home job. Have it designed and treated by "
            f"qualified people, from certified bar.{first}"
        )
    if verdict == "coupon_first":
        known = all(item.gate.name == "model" for item in advice.apart)
        why = "The bar is of unknown grade: harden a coupon of it first"
        if known:
            why = "What is left goes beyond what is modelled: harden a like coupon first"
        return f"{why}; no procedure before that result."
    if verdict == "no_option":
        return (
            "Nothing in this workshop meets every demand; see what binds and what came nearest."
        )
    best = advice.options[0]
    hrc = shown(median(best.judged.prediction.surface_hrc))
    if advice.as_bought is not None:
        plain = advice.as_bought
        text = f"It meets every demand without hardening: {name(plain)}."
        if plain is not best:
            text += f" Scored first, though: {name(best)} ({hrc})."
        return text
    if advice.toss_up:
        return f"A toss-up between {name(best)} and {name(advice.options[1])}."
    return f"{name(best)}: {hrc}{_off(best, advice.job.leading)}.{_brittle(best)}"


def _off(option: Option, demand: Demand) -> str:
    """Return the hardness aimed at where the option misses it, else nothing."""
    low, high = demand.low_hrc, demand.high_hrc
    hrc = median(option.judged.prediction.surface_hrc)
    if low is not None and high is not None and not low - 0.5 <= hrc <= high + 0.5:
        return f", where {shown_range(low, high)} was aimed at"
    return ""


def _brittle(option: Option) -> str:
    """Return a sentence where the temper itself makes the steel brittle, else nothing."""
    temper, steel = option.choice.temper, option.treatment.steel
    for span in steel.embrittlement_c:
        if temper.means != "none" and span.low <= temper.temperature_c <= span.high:
            return (
                f" Tempered there {steel.name} turns brittle: below {span.low:g} °C or above "
                f"{span.high:g} °C is better, where the workshop can."
            )
    return ""
