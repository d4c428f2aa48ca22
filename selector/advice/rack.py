"""The rack first: every bar on it, what it is best for here, and the reason for its place."""

from selector.advice.advise import Advice
from selector.advice.doing import doing_words, surface_words, way_words
from selector.advice.mixture import mixture
from selector.advice.order import why_not_first
from selector.advice.record import RackOut
from selector.decision.option import Option, Rejected
from selector.gate import Gate, looked_at
from selector.job.sold import unfit_bar
from selector.job.supply import Racked
from selector.procedure.quenching import BATHS
from selector.wording import in_sentence, times_in_100

# Gates of the bar itself, whatever is done to it.
OF_THE_BAR = frozenset({"safety", "stock"})


def rack(advice: Advice) -> tuple[RackOut, ...]:
    """Return every bar on the rack with its best option, or the gate that stopped it.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of RackOut
        In the order of the rack; a bar whose name means several steels stands last.
    """
    known = tuple(_of_bar(advice, racked) for racked in advice.job.bench.stock)
    unclear = tuple(
        RackOut(
            bar=item.bar.steel,
            steel=None,
            place=None,
            id=None,
            verdict="unknown",
            why="may be any of "
            + ", ".join(steel.spoken for steel in item.steels)
            + ": make sure which",
        )
        for item in advice.job.bench.unclear
    )
    return (*known, *unclear)


def bar_label(racked: Racked) -> str:
    """Return a bar as the user calls it."""
    if racked.bar.size is None:
        return racked.bar.steel
    return f"{racked.bar.steel} {racked.bar.size:.1f}".removesuffix(".0") + " mm"


def _of_bar(advice: Advice, racked: Racked) -> RackOut:
    """Return one bar with its best option, or with what stopped it."""

    def out(verdict: str, why: str, option_id: str | None, place: int | None = None) -> RackOut:
        return RackOut(
            bar=bar_label(racked),
            steel=racked.steel.name,
            place=place,
            id=option_id,
            verdict=verdict,
            why=why,
            certified=racked.bar.evidence == "certificate",
        )

    for place, option in enumerate(advice.options, start=1):
        if _is_of(option, racked):
            return out(option.judged.verdict, _reason(advice, option, place), option.id, place)
    beaten = next((option for option in advice.outdone if _is_of(option, racked)), None)
    if beaten is not None:
        return out(beaten.judged.verdict, _beaten(advice, beaten), beaten.id)
    return out(*_stopped(advice, racked), None)


def _is_of(option: Option, racked: Racked) -> bool:
    """Return whether an option is made of a bar of the rack."""
    work = option.treatment
    return work.steel is racked.steel and work.stock == racked.bar


def _reason(advice: Advice, option: Option, place: int) -> str:
    """Return what a bar is best for and why it stands where it does."""
    text = f"{doing_words(advice, option)}; {surface_words(option)}"
    return text if place == 1 else f"{text}. Not first: {why_not_first(advice, option)}"


def _beaten(advice: Advice, option: Option) -> str:
    """Return what a bar is best for, and which one of its family took its place."""
    text = f"{doing_words(advice, option)}; {surface_words(option)}"
    for place, other in enumerate(advice.options, start=1):
        if other.treatment.group == option.treatment.group:
            steel = other.treatment.steel.spoken
            return f"{text}. {steel}, a near-equal, does the same better: number {place}"
    return text


def _stopped(advice: Advice, racked: Racked) -> tuple[str, str]:
    """Return the verdict and the gate that stopped the best that could be made of a bar."""
    mine = [
        item
        for item in (*advice.rejected, *advice.apart)
        if item.treatment.steel is racked.steel and item.treatment.stock == racked.bar
    ]
    if mine:
        # Where nothing is hardened, it is the bar as it lies there that is asked about.
        plain = [item for item in mine if item.treatment.route.process == "none"]
        bare = plain and advice.options and advice.options[0] is advice.as_bought
        nearest = max(
            plain if bare else mine,
            key=lambda item: _nearness(item, advice.asked.limit.budget),
        )
        gate, way = nearest.gate, f"{way_words(nearest.treatment)}: "
        if nearest.treatment.route.process == "none":
            way = "used as it is: "
        if gate.name in OF_THE_BAR or gate.verdict == "unknown":
            way = ""
        return gate.verdict, way + gate.text.rstrip(".") + _likely(advice, racked)
    thin = _thin(advice, racked)
    if thin is not None:
        return thin.verdict, thin.text
    same = (o for o in advice.job.bench.stock if o.steel.slug == racked.steel.slug)
    bars = [other for other in same if _thin(advice, other) is None]
    if bars[0].bar != racked.bar:
        return "pass", f"the same steel as {bar_label(bars[0])}"
    family = in_sentence(advice.job.catalog.families[racked.steel.family].name)
    return "fail", f"a steel of its kind ({family}) does the same better"


def _thin(advice: Advice, racked: Racked) -> Gate | None:
    """Return why a bar is too thin for the part in every condition it may be in, or none."""
    gates = [unfit_bar(advice.job.asked, racked.bar, c) for c in racked.conditions]
    return gates[0] if gates and all(gates) else None


def _likely(advice: Advice, racked: Racked) -> str:
    """Return which steels a bar of unknown make may be and what comes of it, if unknown."""
    guesses = sorted(racked.steel.likely, key=lambda guess: -guess.share.value)
    steels = advice.job.catalog.steels
    named = [
        f"{steels[g.steel].spoken} ({100 * g.share.value:.0f} in 100)"
        for g in guesses[:3]
        if g.steel in steels
    ]
    if not named:
        return ""
    return f"; likely {', '.join(named)}{_over_all(advice, racked)}"


def _over_all(advice: Advice, racked: Racked) -> str:
    """Return how often the part comes out right over all that an unknown bar may be."""
    found = mixture(advice, racked)
    if found is None:
        return ""
    first = found.likely[0]
    bath = BATHS.get(found.medium.slug, in_sentence(found.medium.name))
    return (
        f". Over all it may be, quenched in {bath} and tempered as its coupon tells, it comes "
        f"right {times_in_100(found.comes_right)}; were it {first.steel.spoken}, "
        f"{times_in_100(first.comes_right)}"
    )


def _nearness(item: Rejected, budget: float | None) -> tuple[float, bool, int, bool]:
    """Return how near a treatment came, then how far it was looked at, the simplest first."""
    unknown = item.gate.verdict == "unknown"
    simple = not unknown and item.treatment.route.process == "none"
    return (item.nearness(budget), unknown, looked_at(item.gate), simple)
