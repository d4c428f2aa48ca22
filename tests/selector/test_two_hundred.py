"""Two hundred small parts: no rule of the trade is broken, and what is eased scores no lower.

Every rule runs over all of them. A larger budget and a higher demand judge again what the
advice offers, made in the same way; a workshop that gets more equipment is advised anew, every
fifth one. Odd parts, and the other two advised anew: `test_any_part`, `test_any_change`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from types import MappingProxyType

from catalog import Catalog
from selector.advice.advise import Advice, advise
from selector.advice.output import advice_out
from selector.decision.drawback import set_back, spoils_mate, stands_back
from selector.decision.judgement import Judged, judge
from selector.decision.option import scorer_of
from selector.job.job import Job, resolved
from selector.option.reference_bar import reference_cost
from selector.option.temper_choice import STRUCK_LEAST_TEMPER_C
from selector.requirement import requirement_from
from tests.dog import EVERY_KIND
from tests.selector.test_any_part import faults
from tests.small_requirement import Table, small_draft
from tests.whole_requirement import KNOWN

COUNT = 200
NUMBERS = range(COUNT)
# Steels looked at a part, besides those of its rack; all kinds come round in twenty parts.
STEELS = 1
ROUNDING = 1e-9
# So sure an option must be to count as coming out right. [-]
RIGHT = 0.9
MORE = {"heat": {"source": "heat-treat-oven"}, "bath": {"medium": "plates"}}


def catalog_of(number: int, draft: Table) -> Catalog:
    """Return a few steels of every kind in their turn, and those of the rack."""
    first = number * STEELS % len(EVERY_KIND)
    slugs = set((EVERY_KIND * 2)[first : first + STEELS])
    for bar in draft["workshop"]["stock"]:
        slugs |= {steel.slug for steel in KNOWN.find(bar["steel"])}
    steels = {slug: KNOWN.steels[slug] for slug in sorted(slugs)}
    return replace(KNOWN, steels=MappingProxyType(steels))


@dataclass(frozen=True, eq=False)
class Advised:
    """A numbered small part, as a draft and with the advice on it."""

    number: int
    draft: Table
    advice: Advice


def advised(number: int) -> Advised:
    """Return the advice on a numbered small part."""
    draft = small_draft(number)
    return Advised(number, draft, advise(requirement_from(draft), catalog_of(number, draft)))


def with_part(draft: Table, name: str, **changes: object) -> Table:
    """Return a draft with one of its tables altered."""
    return draft | {name: draft[name] | changes}


def altered(number: int, draft: Table) -> Job:
    """Return the job of a part that is asked for otherwise, among the same steels."""
    return resolved(requirement_from(draft), catalog_of(number, draft))


def judged_again(advice: Advice, job: Job) -> list[Judged]:
    """Return every option as another demand judges it, made in the same way."""
    return [
        judge(option.judged.prediction, option.choice.sensitivity_hrc, job)
        for option in advice.options
    ]


def unsound_numbers(part: Advised) -> Iterator[str]:
    """Nothing is no number, shares are shares, every range ascends."""
    yield from faults(advice_out(part.advice).model_dump())


def struck_and_hard(part: Advised) -> Iterator[str]:
    """What is struck is tempered so far that it does not fly to pieces."""
    if part.advice.asked.load.impact != "hammered":
        return
    for option in part.advice.options:
        hard = option.treatment.hardens or option.treatment.route.process == "case"
        if hard and option.choice.temper.temperature_c < STRUCK_LEAST_TEMPER_C:
            yield f"{option.id}: struck and tempered at {option.choice.temper.temperature_c} °C"


def heat_from_nowhere(part: Advised) -> Iterator[str]:
    """Residual heat runs back from what was not hardened."""
    advice = part.advice
    if len(advice.job.hard) >= len(advice.asked.part.section):
        for option in advice.options:
            if option.choice.temper.means == "residual":
                yield f"{option.id}: residual heat with no mass behind"


def mate_spoiled_first(part: Advised) -> Iterator[str]:
    """What wears its dear mate is not first where another serves."""
    options, asked = part.advice.options, part.advice.asked
    if any(not stands_back(option, asked) for option in options) and spoils_mate(options[0]):
        yield f"{options[0].id}: first, and it wears its mate"


def lowered_by_a_budget(part: Advised) -> Iterator[str]:
    """A larger budget never lowers a score."""
    number, draft, advice = part.number, part.draft, part.advice
    ample = altered(number, with_part(draft, "limit", budget=3 * draft["limit"]["budget"]))
    scorer = scorer_of(ample, reference_cost(ample))
    for option, judged in zip(advice.options, judged_again(advice, ample), strict=True):
        again = scorer.option(judged, option.choice)
        if again.score < option.score - ROUNDING:
            yield f"{option.id}: {option.score}, with a larger budget {again.score}"


def met_more_often(part: Advised) -> Iterator[str]:
    """A higher demand is met no more often."""
    number, draft, advice = part.number, part.draft, part.advice
    low = advice.job.leading.low_hrc or 20.0
    zone = draft["zone"][0] | {"hardness": {"min": f"{low + 4:g} HRC"}}
    harder = altered(number, draft | {"zone": [zone, *draft["zone"][1:]]})
    for option, judged in zip(advice.options, judged_again(advice, harder), strict=True):
        before, after = (
            {gate.name: gate.share for gate in gates if gate.share is not None}
            for gates in (option.judged.gates, judged.gates)
        )
        least = before.get("hard_enough", 1.0)
        if after.get("hard_enough", least) > least + ROUNDING:
            yield f"{option.id}: hard enough {least}, of 4 HRC more {after['hard_enough']}"


def lost_to_equipment(part: Advised) -> Iterator[str]:
    """More equipment removes nothing that came out right: every fifth part, advised anew."""
    number, draft, advice = part.number, part.draft, part.advice
    if number % 5:
        return
    shop = draft["workshop"]
    more = {key: [*shop[key], extra] for key, extra in MORE.items()}
    richer = advise(
        requirement_from(with_part(draft, "workshop", **more)), catalog_of(number, draft)
    )
    right = {
        option.treatment.group
        for option in advice.options
        if option.judged.passing_all >= RIGHT and not set_back(option, advice.asked)
    }
    for group in right - {option.treatment.group for option in richer.options}:
        yield f"{group}: gone with more equipment"


RULES = (
    unsound_numbers, struck_and_hard, heat_from_nowhere, mate_spoiled_first,
    lowered_by_a_budget, met_more_often, lost_to_equipment,
)  # fmt: skip


def looked_at(part: Advised) -> tuple[bool, bool, set[str]]:
    """Return whether a part is struck, whether it has a mate, and the routes of its options."""
    asked = part.advice.asked
    routes = {option.treatment.route.kind for option in part.advice.options}
    return asked.load.impact == "hammered", asked.zone[0].mate is not None, routes


def test_no_rule_is_broken_by_any_of_two_hundred_parts():
    """Most have options, of many routes, struck ones and dear mates among them."""
    broken, seen = [], []
    for number in NUMBERS:
        part = advised(number)  # one at a time: an advice is large
        broken += [f"{number}: {fault}" for rule in RULES for fault in rule(part)]
        seen.append(looked_at(part))
    assert not broken, "\n" + "\n".join(broken)
    answered = [(struck, mate) for struck, mate, routes in seen if routes]
    assert len(answered) > COUNT // 2
    assert len(set().union(*(routes for *_, routes in seen))) >= 8
    assert min(sum(struck for struck, _ in answered), sum(m for _, m in answered)) > COUNT // 10
