"""The first lines of an advice: what to do, in a sentence."""

from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.decision.output import temper_out
from selector.figure import median
from selector.job.demand import Demand
from selector.job.treatment import Means
from selector.wording import condition_words, in_bath, in_sentence, shown, shown_range

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
    bar = f"{work.steel.spoken}, {condition_words(work.condition.name)}"
    if temper.means == "residual":
        return f"{bar}: {_end_words(option)}"
    medium = work.medium if work.route.place == "workshop" else None
    text = in_bath(in_sentence(work.route.name), medium.slug if medium else None)
    text = f"{bar}: {text}"
    if temper.means == "none":
        return text
    return f"{text}, tempered at {temper.temperature_c:.0f} °C {_BY_MEANS[temper.means]}"


def _end_words(option: Option) -> str:
    """Return how an end is quenched and tempered by the heat left behind it."""
    medium, temper = option.treatment.medium, temper_out(option.choice)
    shade = temper.colour or f"{temper.temperature_c:.0f} °C"
    end = in_bath("the end", medium.slug if medium else None)
    return f"{end}, the colour let run down and quenched out at {shade}"


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
    return f"{name(best)}; gives {hrc}{_off(best, advice.job.leading)}.{_brittle(best)}"


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
