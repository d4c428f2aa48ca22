"""Remarks: what a good hand would say unasked, and where practice is divided."""

from collections.abc import Callable

import numpy as np

from selector.advice.advise import Advice
from selector.decision.duty_gate import CASE_SHARE
from selector.decision.option import Option
from selector.duty.pair import left_open
from selector.duty.stiffness import stiffness
from selector.duty.wear import carbide_gain
from selector.figure import median
from selector.option.cost import bark_mm
from selector.option.prediction import embrittled
from selector.requirement.pairwise import CONSISTENT
from selector.wording import shown_mm, times_in_100

# Share of the sample in which an option must beat the first to be named. [-]
MOSTLY = 0.6
# Nine in ten of a normal sample lie between these standard deviations.
MIDDLE_NINETY = (-1.645, 1.645)
# A growth that no workshop measures. [mm]
LEAST_GROWTH_MM = 0.01
DRIVE_SQUARE_LEAST_HRC = 39.0
BS_LETTERS = frozenset("PQRSTUVWXYZ")


def _stiffness(advice: Advice) -> str | None:
    """Say that hardness is no stiffness, where a slender part might tempt."""
    return stiffness(advice.asked)


def _square(advice: Advice) -> str | None:
    """Say what a driving square needs, and that harder is not stronger."""
    squares = {"square", "hexagon"} & {s.shape for s in advice.asked.part.section}
    if not squares or not advice.asked.load.torque:
        return None
    return (
        f"Driving squares of hand tools are at least {DRIVE_SQUARE_LEAST_HRC:.0f} HRC "
        "(ISO 3315:2018); at 60 HRC one snaps under a jerk. Harder is not stronger here."
    )


def _letter(advice: Advice) -> str | None:
    """Say what the letter after an EN number means."""
    for held in advice.job.bench.stock:
        if held.mark is not None and held.mark in BS_LETTERS:
            return (
                f"The letter in {held.bar.steel} is a strength condition (quenched and "
                "tempered), not nitriding; it is taken as pre-hardened bar."
            )
    return None


def _kitchen_oven(advice: Advice) -> str | None:
    """Say that a kitchen oven is too cool for a spring or tough temper."""
    sources = {source.slug for source in advice.job.bench.sources}
    hotter = {"muffle-furnace", "kiln", "heat-treat-oven"} & sources
    if "kitchen-oven" in sources and not hotter:
        return (
            "A kitchen oven stops near 250 to 290 °C: for a temper at 400 °C take a furnace, "
            "hot sand over the fire, a flame guided by crayons, or pre-hardened bar."
        )
    return None


def _embrittling(advice: Advice) -> str | None:
    """Say which temper to avoid, for the leading steels that have such a window."""
    for option in advice.options[:3]:
        for span in option.treatment.steel.embrittlement_c:
            if option.treatment.hardens and span.low < 400:
                return (
                    f"Do not temper {option.treatment.steel.name} to blue: {span.low:.0f} to "
                    f"{span.high:.0f} °C makes it brittle. Stay below, or go above 400 °C."
                )
    return None


def _divided(advice: Advice) -> str | None:
    """Say where practice is divided: how hard an alloy steel may be left where it is struck."""

    def low_tempered(option: Option) -> bool:
        temper = option.choice.temper
        alloy = option.treatment.steel.kind == "alloy" and option.treatment.hardens
        return alloy and temper.means != "none" and temper.temperature_c < 300

    struck = advice.asked.load.impact == "hammered"
    if struck and any(low_tempered(option) for option in advice.options[:3]):
        return (
            "Practice is divided on alloy steel left above 50 HRC where it is struck: some "
            "temper at 200 to 230 °C and have no trouble, others go above 400 °C and accept 40 "
            "to 45 HRC for fear of flying chips. The energy of the blow decides: light hammers "
            "the first, power hammers the second."
        )
    return None


def _outvoted(advice: Advice) -> str | None:
    """Say so when another option mostly beats the first but fails more often."""
    if not advice.options:
        return None
    first = advice.options[0]
    for place, option in enumerate(advice.options[1:8], start=2):
        share = advice.shares[option.id, first.id]
        if share > MOSTLY:
            fails = times_in_100(1 - option.judged.passing_all)
            return (
                f"Option {place} ({option.treatment.steel.name}, "
                f"{option.treatment.route.name.lower()}) scores above the first "
                f"{times_in_100(share)}, but fails a demand {fails}: better if it comes out "
                "right, worse on average."
            )
    return None


def _finish(advice: Advice) -> str | None:
    """Say what to leave for finishing after the heat treatment."""
    first = advice.options[0] if advice.options else None
    if first is None or not first.treatment.hardens:
        return None
    growth = first.judged.prediction.movement.growth_mm
    grows = "hardly grows" if growth < LEAST_GROWTH_MM else f"grows about {shown_mm(growth)}"
    return (
        f"Do not finish to size first: it {grows} across the working section, but scales and "
        "loses its skin. Leave 0.1 to 0.25 mm a side where it must fit, and lap or grind "
        "it after."
    )


def _prehard_instead(advice: Advice) -> str | None:
    """Say that pre-hardened bar spares the quench, where it meets every demand."""
    first = advice.options[0] if advice.options else None
    if first is None or first.treatment.route.process == "none":
        return None
    for option in advice.options:
        if option.treatment.route.kind == "prehard" and option.judged.verdict == "pass":
            return (
                f"{option.treatment.steel.name} pre-hardened meets every demand too and needs "
                "no quench at all."
            )
    return None


def _narrow_window(advice: Advice) -> str | None:
    """Say so when a chosen temper lies in the steel's own embrittlement window."""
    for option in advice.options[:3]:
        if embrittled(option.treatment, option.choice.temper):
            return (
                f"{option.choice.temper.temperature_c:.0f} °C by {option.choice.temper.means} "
                f"lies in, or a misreading away from, the embrittlement window of "
                f"{option.treatment.steel.name}; its toughness is counted a class lower."
            )
    return None


def _pair(advice: Advice) -> str | None:
    """Say which of the pair will wear with the first option, or which ought to."""
    first = advice.options[0] if advice.options else None
    if first is None:
        return None
    gate = next((g for g in first.judged.gates if g.name == "pair"), None)
    return f"Of the pair {gate.text}." if gate else left_open(advice.leading_zone)


def _bark(advice: Advice) -> str | None:
    """Say that black bar has a skin that will not harden."""
    for option in advice.options[:3]:
        work = option.treatment
        if work.condition.surface == "black" and work.hardens:
            thick = max(section.size for section in advice.asked.part.section)
            skin_mm = max(1.0, bark_mm(work.steel, thick))
            return (
                f"{work.steel.name} comes as black bar: skim the black skin off, "
                f"{skin_mm:.0f} mm a side, before hardening; it has lost its carbon and stays "
                "soft."
            )
    return None


def _thin_case(advice: Advice) -> str | None:
    """Say how a case too thin for a Rockwell cone is to be measured."""
    for option in advice.options[:3]:
        outcome = option.judged.prediction
        if outcome.layer is None:
            continue
        # ISO 6508-1 (from memory): a layer of at least ten indentations, 2 µm each point.
        least_mm = 10 * 0.002 * (100.0 - median(outcome.surface_hrc))
        depth_mm = median(outcome.depth_mm)
        if depth_mm < least_mm:
            return (
                f"A Rockwell C cone reads the core through the {depth_mm:.2f} mm layer of "
                f"{option.treatment.steel.name} (it wants {least_mm:.1f} mm): prove it with a "
                "file, or have HV1 or HR15N measured."
            )
    return None


def _tooth(advice: Advice) -> str | None:
    """Say how thick a tooth a case wants, where no thickness of its teeth is stated."""
    teeth = [f for f in advice.asked.part.feature if f.kind == "teeth"]
    if not teeth or any(tooth.size is not None for tooth in teeth):
        return None
    for option in advice.options[:3]:
        run = option.judged.prediction.layer
        if run is not None and option.treatment.route.process == "case":
            grown = run.depth_mm + run.removed_mm
            return (
                f"{grown:.1f} mm of case is for teeth of {grown / CASE_SHARE:.1f} mm at half "
                f"height or more (module {grown / 0.4:.1f} mm): thinner ones are cased through "
                "and break. State the thickness of the teeth as their size."
            )
    return None


def _life(advice: Advice) -> str | None:
    """Say so when no option lasts as long as was asked."""
    wanted = advice.leading_zone.life_ratio
    if wanted is None or not advice.options:
        return None
    best = max(advice.options, key=lambda option: option.judged.value("hardness"))
    share = best.judged.value("hardness")
    if share >= 1:
        return None
    return (
        f"No option lasts {wanted:g} times as long as the softest part that would do; "
        f"{best.treatment.steel.name}, {best.treatment.route.name.lower()}, comes to "
        f"{share * wanted:.1f} times. Lubricate, widen the bearing, or make it easy to renew."
    )


def _carbides(advice: Advice) -> str | None:
    """Say what hard carbides add where grit wears."""
    for option in advice.options[:3]:
        gain = carbide_gain(option.treatment, advice.job.leading, advice.asked)
        if gain.ratio > 1:
            low, high = gain.sampled(np.array(MIDDLE_NINETY))
            return (
                f"{option.treatment.steel.name} is full of hard carbides: under grit it lasts "
                f"about {gain.ratio:.1f} times ({low:.1f} to {high:.1f}) as long as plain tool "
                "steel of equal hardness (counted where a life is asked for). Struck, or "
                "sliding on metal, they gain nothing for sure."
            )
    return None


def contradictory(advice: Advice) -> str | None:
    """Say that the comparisons of criteria contradict each other."""
    given = advice.asked.priorities
    if given.inconsistency <= CONSISTENT:
        return None
    return (
        f"Your comparisons of criteria contradict each other (consistency ratio "
        f"{given.inconsistency:.2f}; up to {CONSISTENT:.2f} is usual): look first at "
        f"{' against '.join(given.oddest)}."
    )


_RULES: tuple[Callable[[Advice], str | None], ...] = (
    contradictory,
    _outvoted,
    _prehard_instead,
    _letter,
    _square,
    _embrittling,
    _narrow_window,
    _kitchen_oven,
    _divided,
    _stiffness,
    _pair,
    _life,
    _carbides,
    _tooth,
    _thin_case,
    _bark,
    _finish,
)


def remarks(advice: Advice) -> tuple[str, ...]:
    """Return the remarks that fit this advice; common practice where no source is named."""
    said = (rule(advice) for rule in _RULES)
    return tuple(sentence for sentence in said if sentence is not None)
