"""Two hundred small parts: no rule of the trade is broken, and what is eased scores no lower.

Every rule runs over all of them. A larger budget and a higher demand judge again what the
advice offers, made in the same way; a workshop that gets more equipment is advised anew, every
fifth one. Odd parts, and the other two advised anew: `test_any_part`, `test_any_change`.
"""

from dataclasses import dataclass, replace
from types import MappingProxyType

import pytest

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


SEEN: dict[int, tuple[bool, bool, set[str]]] = {}


# One part after the other, each with all its rules, so that one advice is held at a time.
@pytest.fixture(scope="module", params=NUMBERS)
def part(request) -> Advised:
    """Return the advice on a numbered small part."""
    number = request.param
    draft = small_draft(number)
    advice = advise(requirement_from(draft), catalog_of(number, draft))
    SEEN[number] = (
        advice.asked.load.impact == "hammered",
        advice.asked.zone[0].mate is not None,
        {option.treatment.route.kind for option in advice.options},
    )
    return Advised(number, draft, advice)


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


def test_the_numbers_are_sound(part):
    """Nothing is no number, shares are shares, every range ascends."""
    assert list(faults(advice_out(part.advice).model_dump())) == []


def test_the_rules_of_the_trade_hold(part):
    advice = part.advice
    struck = advice.asked.load.impact == "hammered"
    for option in advice.options:
        work, temper = option.treatment, option.choice.temper
        hard = work.hardens or work.route.process == "case"
        assert not (struck and hard) or temper.temperature_c >= STRUCK_LEAST_TEMPER_C, option.id
        if temper.means == "residual":
            assert len(advice.job.hard) < len(advice.asked.part.section), option.id
    spared = [option for option in advice.options if not stands_back(option, advice.asked)]
    assert not (spared and spoils_mate(advice.options[0]))


def test_a_larger_budget_never_lowers_a_score(part):
    number, draft, advice = part.number, part.draft, part.advice
    ample = altered(number, with_part(draft, "limit", budget=3 * draft["limit"]["budget"]))
    scorer = scorer_of(ample, reference_cost(ample))
    for option, judged in zip(advice.options, judged_again(advice, ample), strict=True):
        again = scorer.option(judged, option.choice)
        assert again.score >= option.score - ROUNDING, option.id


def test_a_higher_demand_is_met_no_more_often(part):
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
        assert after.get("hard_enough", least) <= least + ROUNDING, option.id


def test_more_equipment_removes_nothing_that_came_out_right(part):
    number, draft, advice = part.number, part.draft, part.advice
    if number % 5:
        return  # every fifth: as dear as the advice itself
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
    assert right <= {option.treatment.group for option in richer.options}


def test_the_rules_had_something_to_look_at():
    """Most parts have options, of many routes, struck ones and dear mates among them."""
    assert len(SEEN) == COUNT
    answered = [(struck, mate) for struck, mate, routes in SEEN.values() if routes]
    assert len(answered) > COUNT // 2
    assert len(set().union(*(routes for *_, routes in SEEN.values()))) >= 8
    assert min(sum(struck for struck, _ in answered), sum(m for _, m in answered)) > COUNT // 10
