"""The first lines of an advice: what to do, and how often it comes out right."""

from selector.advice.advise import ABOUT_HRC, SURE, Advice
from selector.advice.doing import bar_words, doing_words, surface_words
from selector.advice.mixture import worth_a_coupon
from selector.advice.rack import bar_label
from selector.decision.hardness_gate import floor_hrc
from selector.decision.option import Option
from selector.figure import median
from selector.job.demand import Demand
from selector.procedure.quenching import BATHS
from selector.requirement import Requirement
from selector.wording import in_100, in_sentence, right_words, shown, shown_range, times_in_100


def name(advice: Advice, option: Option) -> str:
    """Return an option in words: bar, what is done to it, and temper."""
    return f"{bar_words(advice, option)}: {doing_words(advice, option)}"


def headline(advice: Advice) -> str:
    """Return what to do, in a few sentences; only what stands first is named."""
    verdict = advice.verdict
    if verdict == "safety_referral":
        return referral_words(advice.asked)
    if verdict == "coupon_first":
        known = all(item.gate.name == "model" for item in advice.apart)
        why = "The bar is of unknown grade: harden a coupon of it first"
        if known:
            why = "What is left goes beyond what is modelled: harden a like coupon first"
        return f"{why}; no procedure before that result."
    if verdict == "no_option":
        where = "on this rack" if advice.asked.workshop.only_stock else "in this workshop"
        text = f"Nothing {where} meets every demand; see what binds and what came nearest."
        coupon = " The bar of unknown grade may: harden a coupon of it first."
        return text + coupon * bool(advice.apart)
    return _coupon_of_rack(advice, _best(advice)) + _of_rack(advice)


def _coupon_of_rack(advice: Advice, best: str) -> str:
    """Return what stands first, after the unknown bar of the rack that is tried before it."""
    worth = worth_a_coupon(advice)
    if worth is None:
        return best
    held, found = worth
    bath = BATHS.get(found.medium.slug, in_sentence(found.medium.name))
    return (
        f"From the rack, a coupon first: {bar_label(held)}, quenched in {bath}, comes right "
        f"{times_in_100(found.comes_right)} whatever it is. If not that, "
        f"{best if best[1:2].isupper() else best[:1].lower() + best[1:]}"
    )


def _of_rack(advice: Advice) -> str:
    """Return whether the best of the rack is good enough, where the rack alone may be used."""
    if not advice.asked.workshop.only_stock:
        return ""
    right = advice.options[0].judged.passing_all
    if right >= SURE:
        return " It is the best of your rack, and good enough."
    return (
        " It is the best of your rack, and not good enough to count on: "
        f"{in_100(1.0 - right)} are spoilt."
    )


def _best(advice: Advice) -> str:
    """Return what stands first, and what it leads to."""
    best = advice.options[0]
    if advice.toss_up and advice.as_bought is not best:
        return _toss_up(advice, best, advice.options[1])
    hrc = surface_words(best)
    text = f"{name(advice, best)}; {hrc}{_off(best, advice.job.leading)}. {_chances(best)}."
    if advice.as_bought is best:
        return f"No hardening needed. {_capital(text)}"
    if advice.as_bought is not None and best.treatment.hardens:
        text += " It would do without hardening too: see below."
    return _capital(text) + _brittle(best)


def referral_words(asked: Requirement) -> str:
    """Return where a part goes that lives depend on."""
    use = asked.vital_use
    what = f"{use} part" if use == asked.safety_use else use
    return (
        f"{what[0].upper()}{what[1:]}: not a home job. Have it designed and treated by "
        "qualified people, from certified bar."
    )


def _toss_up(advice: Advice, first: Option, second: Option) -> str:
    """Return two options that are level, with how often each comes out right."""
    shares = _both(first.judged.passing_all, second.judged.passing_all)
    budgets = first.judged.within_budget, second.judged.within_budget
    text = f"A toss-up: {_either(advice, first, second)}. They come out right {shares}"
    if budgets[0] is not None and budgets[1] is not None:
        text += f", inside the budget {_both(budgets[0], budgets[1])}"
    off = _off(first, advice.job.leading)
    return f"{text}; {surface_words(first)}{off}." if off else f"{text}."


def _both(one: float, other: float) -> str:
    """Return how often each of two holds, said once where it reads alike."""
    said = in_100(one), in_100(other)
    return f"both {said[0]}" if said[0] == said[1] else " and ".join(said)


def _either(advice: Advice, first: Option, second: Option) -> str:
    """Return two options in words, what is done to either said once where it is the same."""
    done = doing_words(advice, first)
    if done != doing_words(advice, second):
        return f"{name(advice, first)}; or {name(advice, second)}"
    return f"{bar_words(advice, first)} or {bar_words(advice, second)}: {done}"


def _chances(option: Option) -> str:
    """Return how often an option comes out right, and inside the budget."""
    return _capital(right_words(option.judged.passing_all, option.judged.within_budget))


def _capital(text: str) -> str:
    """Return a sentence with its first letter large, unless it is a designation."""
    first = text.split(" ", 1)[0].rstrip(",:;")
    return text if any(letter.isdigit() for letter in first) else text[:1].upper() + text[1:]


def _off(option: Option, demand: Demand) -> str:
    """Return the hardness aimed at where the option misses it, else nothing."""
    low, high = demand.low_hrc, demand.high_hrc
    hrc = median(option.judged.prediction.surface_hrc)
    if low is None or high is None or low - ABOUT_HRC <= hrc <= high + ABOUT_HRC:
        return ""
    floor = floor_hrc(option.treatment, demand)
    if floor != demand.floor_hrc:
        # Bar that is used as it comes is asked for less, and nobody aimed at more; wire is as
        # its makers found right.
        if floor is None or hrc > high:
            return ""
        longer = f"hardened to {shown_range(low, high)} it lasts longer"
        return f", which does here from {shown(floor)} up; {longer}"
    return f", where {shown_range(low, high)} was aimed at"


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
