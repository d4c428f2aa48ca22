"""The first lines of an advice: what to do, in a sentence."""

from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.figure import median
from selector.job.demand import Demand
from selector.wording import shown, shown_range


def name(option: Option) -> str:
    """Return an option in words.

    Parameters
    ----------
    option : Option
        A ranked option.

    Returns
    -------
    str
        Steel, route, medium and temper.
    """
    work = option.treatment
    text = f"{work.steel.name} ({work.condition.name}), {work.route.name.lower()}"
    if work.medium is not None and work.route.place == "workshop":
        text += f" in {work.medium.slug.replace('-', ' ')}"
    temper = option.choice.temper
    if temper.means != "none":
        text += f", temper {temper.temperature_c:.0f} °C by {temper.means}"
    return text


def headline(advice: Advice) -> str:
    """Return the one line that says what to do.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    str
        One or two sentences.
    """
    verdict = advice.verdict
    if verdict == "safety_referral":
        use = advice.asked.safety_use
        first = f" If bar will do: {name(advice.options[0])}." if advice.options else ""
        return (
            f"Lives depend on this part ({use}): have this designed and treated by qualified "
            f"people, from certified bar.{first}"
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
    """Return a sentence where the draw itself makes the steel brittle, else nothing."""
    temper, steel = option.choice.temper, option.treatment.steel
    for span in steel.embrittlement_c:
        if temper.means != "none" and span.low <= temper.temperature_c <= span.high:
            return (
                f" Drawn there {steel.name} turns brittle: below {span.low:g} °C or above "
                f"{span.high:g} °C is better, where the workshop can."
            )
    return ""
