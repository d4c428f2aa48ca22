"""A letter from the advice's own record: every figure in it is one of the option's."""

from datetime import date

from selector.advice.record import AdviceOut
from selector.handover.letter.difference import difference
from selector.handover.letter.record import Letter, Section, Tone
from selector.handover.letter.said import (
    check_words,
    done_words,
    duty_words,
    is_hardened,
    is_sent_out,
    pieces,
    steel_words,
    tried_words,
    zone_name,
)
from selector.handover.letter.units import in_units
from selector.handover.letter.ways import table, ways
from selector.record import OptionOut, ZoneOut
from selector.requirement import Requirement
from selector.requirement.zone import Zone
from selector.wording import HRC_IN_WORDS, condition_words, shown, shown_range, shown_spread

HEADS = {
    "duty": "What the part has to do",
    "proposal": "What we propose",
    "difference": "What the difference buys",
    "check": "How we check it",
    "rests": "What this rests on",
    "referral": "Why we pass this on",
}
HEADS_OF_WAYS = {1: "Another way", 2: "Two other ways"}
# How many sentences of a section a brief letter has.
_BRIEF = {"duty": 1, "proposal": 2, "difference": 4, "check": 1, "rests": 5}
_LOADS = (
    ("torque", "{:.3g} N m of torque"),
    ("bending", "{:.3g} N m of bending"),
    ("axial", "{:.3g} N along its axis"),
    ("contact", "{:.3g} N of contact"),
)
_IMPACT = {"none": "no knocks", "light": "light knocks", "hammered": "hammer blows"}
NOT_FOR = (
    "The part is not for brakes, steering, lifting, pressure or fast rotation. Local codes and "
    "licensed trades come before anything in this letter."
)
_NO_OFFER = (
    "We do not offer to choose its steel or to harden it, and this letter is no statement that "
    "any material or treatment suits it."
)
_PASSED_ON = (
    "Please take it to people who are qualified and licensed for such parts; what local codes "
    "ask of it comes first."
)


def composed(
    asked: Requirement,
    advice: AdviceOut,
    option: OptionOut | None,
    tone: Tone = "full",
    written: date | None = None,
) -> Letter:
    """Return the letter of one option.

    Parameters
    ----------
    asked : Requirement
        What was asked.
    advice : AdviceOut
        The whole advice, with all its options.
    option : OptionOut or None
        What is proposed; None of a part that is passed on.
    tone : str
        "brief" or "full".
    written : date, optional
        Its date; today if absent.

    Returns
    -------
    Letter
        A part that lives depend on is passed on, and nothing is offered.
    """
    part, day = asked.part, written or date.today()
    reference = f"{part.name}, {pieces(part.quantity)}"
    when = f"{day.day} {day:%B %Y}"
    if option is None or asked.safety_critical:
        section = Section(
            key="referral",
            head=HEADS["referral"],
            paragraphs=(advice.headline, _NO_OFFER, _PASSED_ON),
        )
        return Letter(
            option=None, reference=reference, date=when, greeting="Dear customer,",
            sections=(section,), table=None, is_offer=False, small_print=(),
        )  # fmt: skip
    seen = ways(advice, option)
    zone = leading(asked, advice)
    life = zone.life_ratio is not None
    told = {
        "duty": _duty(asked, advice, option),
        "proposal": _proposal(advice, option, zone),
        "ways": (),
        "difference": difference(seen, advice, life=life),
        "check": _check(option, zone),
        "rests": _rests(asked, advice, option),
    }
    heads = {**HEADS, "ways": HEADS_OF_WAYS.get(len(seen) - 1, "")}
    sections = tuple(
        Section(key=key, head=heads[key], paragraphs=_paragraph(key, said, tone))
        for key, said in told.items()
        if said or (key == "ways" and len(seen) > 1)
    )
    made = Letter(
        option=option.id,
        reference=reference,
        date=when,
        greeting="Dear customer,",
        sections=sections,
        table=table(seen, zone, part.quantity) if len(seen) > 1 else None,
        is_offer=True,
        small_print=_small_print(option),
    )
    return in_units(made, part)


def _paragraph(key: str, said: tuple[str, ...], tone: Tone) -> tuple[str, ...]:
    """Return the sentences of a section as its paragraph, in a brief letter the first few."""
    kept = said[: _BRIEF.get(key, 1)] if tone == "brief" else said
    return (" ".join(kept),) if kept else ()


def leading(asked: Requirement, advice: AdviceOut) -> Zone:
    """Return the zone that the letter speaks of: the one that must be hardest."""
    hard = max(advice.zones, key=lambda zone: zone.floor_hrc or -1.0)
    return asked.zone[hard.zone - 1]


def _demand(asked: Requirement, advice: AdviceOut) -> ZoneOut:
    """Return what that zone was taken to ask."""
    zone = leading(asked, advice)
    return next(z for z in advice.zones if asked.zone[z.zone - 1] is zone)


def _duty(asked: Requirement, advice: AdviceOut, option: OptionOut) -> tuple[str, ...]:
    """Return what the part has to do, in sentences."""
    said = [duty_words(zone) for zone in asked.zone if zone.wear != "none"]
    if not said:
        said = ["Nothing on it wears: it has to carry its load."]
    load = asked.load
    carried = [
        words.format(value)
        for name, words in _LOADS
        if (value := getattr(load, name)) is not None
    ]
    if carried:
        said.append(f"It carries {' and '.join(carried)}, with {_IMPACT[load.impact]}.")
    strength = next((g for g in option.gates if g.name == "strength"), None)
    if strength is not None and strength.verdict == "pass":
        said.append(f"That is no difficulty: {strength.text}.")
    elif not carried:
        said.append("No load was given, so its strength is not judged.")
    return (*said, *_window(_demand(asked, advice)))


def _window(demand: ZoneOut) -> tuple[str, ...]:
    """Return the hardness that is wanted, in a sentence."""
    low, high = demand.low_hrc, demand.high_hrc
    if low is None and high is None:
        return ()
    if low is not None and high is not None:
        span = shown_range(low, high)
    else:
        span = f"{shown(low)} or more" if low is not None else f"{shown(high or 0.0)} or less"
    whose = "For its work it needs" if demand.derived else "You asked for"
    deep = low is not None and demand.depth_mm > 0
    text = f"{whose} a hardness of {span}" + (
        f", {demand.depth_mm:g} mm deep." if deep else "."
    )
    return (text, f"{HRC_IN_WORDS}.") if "HRC" in span else (text,)


def _proposal(advice: AdviceOut, option: OptionOut, zone: Zone) -> tuple[str, ...]:
    """Return what is proposed, in sentences."""
    bought = f"{steel_words(option)}, {condition_words(option.condition)}"
    said = [f"{bought[0].upper()}{bought[1:]}.", done_words(option, zone)]
    hard = option.hardness
    text = f"That leaves {zone_name(zone)} at {shown_spread(hard.surface)}"
    if not is_hardened(option):
        text = f"It is at {shown_spread(hard.surface)} as it comes"
    elif hard.through:
        text += ", hard right through"
    elif hard.depth_mm.p50:
        text += f", hard {hard.depth_mm.p50:.1f} mm deep"
    said.append(f"{text}.")
    if hard.surface.p50 is not None:
        said.append(tried_words(hard.surface.p50))
    if advice.as_bought == option.id:
        said.append("Hardening it would buy nothing that the part needs.")
    elif _is_tough(option):
        said.append("That is hard enough for its work and not so hard that it chips.")
    return tuple(said)


def _is_tough(option: OptionOut) -> bool:
    """Return whether both were judged and passed: hard enough, and not brittle."""
    passed = {gate.name for gate in option.gates if gate.verdict == "pass"}
    return {"hard_enough", "snap"} <= passed and is_hardened(option)


def _check(option: OptionOut, zone: Zone) -> tuple[str, ...]:
    """Return how it is checked, in sentences."""
    checks = [
        words
        for step in option.procedure
        if step.stage == "check" and (words := check_words(step, zone))
    ]
    checks = list(dict.fromkeys(checks))
    said = []
    if option.cost.items.get("coupon", 0.0) > 0.0:
        said.append("A trial piece of the same bar is hardened and tried first.")
    if checks:
        said.append(
            f"Then your part: {', '.join(checks)}."
            if said
            else f"We check it: {', '.join(checks)}."
        )
    elif is_sent_out(option):
        said.append("The firm states the hardness it measured; we look the part over.")
    else:
        said.append("We check the bar against its paper and the sizes against yours.")
    # One thought, also in a brief letter.
    return (" ".join(said),)


def _rests(asked: Requirement, advice: AdviceOut, option: OptionOut) -> tuple[str, ...]:
    """Return what is assumed and what is not covered, in sentences."""
    cost = option.cost.spread
    span = f"{cost.p05:.0f} and {cost.p95:.0f} {option.cost.currency}"
    said = [
        "Sizes and loads are as you gave them.",
        f"The price ends between {span}, nine times in ten.",
        NOT_FOR,
    ]
    if asked.safety_use == "could hurt":
        said.append("You told us that somebody could be hurt if it failed: guard it in use.")
    said.append(_no_life(asked))
    if option.hardness.surface.validity:
        said.append(
            f"{option.steel} is outside the range our figures were made for; the trial piece "
            "decides."
        )
    if asked.limit.budget is not None and asked.limit.currency not in {
        None,
        option.cost.currency,
    }:
        said.append(
            f"Your limit is in {asked.limit.currency}, our prices in {option.cost.currency}: "
            "they are set side by side as they stand."
        )
    if asked.part.shape_class != "plain":
        said.append(f"Its shape, {asked.part.shape_class.replace('-', ' ')}, is not reckoned.")
    if asked.limit.runout is None and is_hardened(option):
        said.append(
            f"You gave no limit for how far it may bow: {option.permitted_movement_mm:g} mm is "
            "taken."
        )
    demand = _demand(asked, advice)
    if demand.derived and demand.low_hrc is not None:
        said.append(f"The hardness is ours, taken from its work ({_reason(demand)}).")
    return tuple(said)


def _reason(demand: ZoneOut) -> str:
    """Return what a window was taken from, without where that is usual."""
    return demand.reason.replace(" (common practice)", "")


def _no_life(asked: Requirement) -> str:
    """Return what is not promised of its life."""
    if any(zone.life_ratio is not None for zone in asked.zone):
        return "The life is reckoned beside a like part, not in years."
    return "We do not promise a life in years."


def _small_print(option: OptionOut) -> tuple[str, ...]:
    """Return how it was reckoned, in small letters."""
    by = f"by temperwright, option {option.id}"
    said = [f"Chances are reckoned from the spread of steel, heat and bath {by}."]
    if option.cost.invented_prices:
        said.append("Prices are invented for demonstration.")
    return tuple(said)
