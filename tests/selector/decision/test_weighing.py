import itertools
from dataclasses import replace
from types import MappingProxyType

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.advice.headline import headline
from selector.advice.output import advice_out
from selector.decision import best_temper, weighing
from selector.decision.best_temper import FAR
from selector.decision.near_tie import NEAR
from selector.decision.option import scorer_of
from selector.decision.weighing import weigh
from selector.errors import OutOfRangeError, Problem
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.option.reference_bar import reference_cost
from selector.requirement.workshop import Workshop
from tests.dog import GONE, asked, only
from tests.whole_requirement import catalog_for, requirement_number


@pytest.fixture(scope="module")
def pool(job, few):
    return tuple(screened(job.asked, few, job.bench))


@pytest.fixture(scope="module")
def scorer(job):
    return scorer_of(job, reference_cost(job))


@pytest.fixture(scope="module")
def weighed(job, pool, scorer):
    return weigh(job, pool, scorer, whole=True)


def test_what_is_out_keeps_its_figures_and_no_samples(job, pool, scorer, weighed):
    plain = weigh(job, pool, scorer)
    assert any(item.option is not None for item in weighed.rejected)
    assert all(item.option is None for item in (*plain.rejected, *plain.apart))
    ends = {item.treatment.label: item for item in weighed.rejected}
    assert {item.treatment.label for item in plain.rejected} == set(ends)
    assert any(is_passed_over(item) for item in plain.rejected)
    for lean in plain.rejected:
        whole = ends[lean.treatment.label]
        # Of tempers that all fail the fullest look may speak by another, about as often right.
        like = (lean.gate.name, lean.gate.verdict) == (whole.gate.name, whole.gate.verdict)
        near = lean.share == pytest.approx(whole.share, abs=0.05)
        assert is_passed_over(lean) or (like and near)
    assert [o.id for o in plain.options] == [o.id for o in weighed.options]


def is_passed_over(item):
    """Return whether a treatment was far from one demand, and so not worked out further."""
    return item.share == 0.0 and item.gate.share is not None and item.gate.share < FAR


SHOP = {
    "heat": [{"source": source} for source in ("oxy-propane", "kiln", "kitchen-oven")],
    "bath": [{"medium": medium} for medium in ("water", "oil")],
    "held_by": "tongs",
    "subcontract": True,
}


@pytest.mark.parametrize("number", [8, 31, 36])
def test_what_is_passed_over_takes_no_place(number, monkeypatch):
    """The list is that of working every treatment out to its end, to the last digit."""
    changes = {"workshop": Workshop.model_validate(SHOP), "safety_use": "none"}
    one = requirement_number(number).model_copy(update=changes)
    near = resolved(one, catalog_for(one, number, 8))
    by = scorer_of(near, reference_cost(near))
    lists = tuple(screened(one, near.catalog, near.bench))
    spared = weigh(near, lists, by)
    # Nothing is so like another that it is spared.
    monkeypatch.setattr(best_temper, "LIKE_HRC", 0.0)
    every = weigh(near, lists, by, whole=True)
    assert [option.id for option in spared.options] == [option.id for option in every.options]
    for one_of, other in zip(spared.options, every.options, strict=True):
        np.testing.assert_array_equal(one_of.scores, other.scores)
    beaten, all_beaten = ([(b.id, b.score) for b in w.beaten] for w in (spared, every))
    assert beaten == all_beaten
    ends = {item.treatment.label: item for item in every.rejected}
    for item in spared.rejected:
        # What was passed over would have come right no oftener than it met the one demand.
        end = ends[item.treatment.label]
        assert item.share == end.share or (is_passed_over(item) and end.share < 1.0)


def test_one_option_a_family_and_route(weighed):
    groups = [option.treatment.group for option in weighed.options]
    assert len(set(groups)) == len(groups)


@pytest.mark.parametrize("usual", ["c45", "080m40"])
def test_of_near_ties_in_a_family_the_one_that_people_buy_speaks(usual):
    known = only("c45", "080m40")
    family = known.families["medium-carbon"].model_copy(update={"usual": usual})
    families = MappingProxyType({**known.families, "medium-carbon": family})
    shop = {
        "workshop.heat": [{"source": "muffle-furnace"}],
        "workshop.bath": [{"medium": "water"}],
        "zone.0.hardness": {"min": "40 HRC"},
    }
    easy = {**shop, "load.impact": "none", "load.torque": "5 N m"}
    found = advise(asked(easy), replace(known, families=families), route="through-furnace")
    (option,) = found.options
    assert option.treatment.steel.slug == usual


def test_a_treatment_stands_in_one_list_only(weighed):
    lists = (weighed.options, weighed.rejected, weighed.apart)
    labels = [{item.treatment.label for item in answer} for answer in lists]
    for first, second in itertools.combinations(labels, 2):
        assert not first & second


def test_no_option_that_fails_a_gate_is_ranked(weighed):
    for option in weighed.options:
        assert option.judged.verdict in {"pass", "marginal"}
    for item in weighed.rejected:
        assert item.gate.verdict == "fail"
        assert 0 <= item.share <= 1


def test_bar_far_too_soft_is_out_before_any_sample(weighed):
    soft = [
        r
        for r in weighed.rejected
        if r.treatment.route.process == "none" and r.gate.name == "hard_enough"
    ]
    plain = [r for r in soft if r.treatment.steel.slug == "s235"]
    assert plain
    assert all(r.option is None and r.share == 0.0 for r in plain)
    assert all("predicted" in r.gate.text for r in soft)


def test_every_treatment_of_the_pool_is_answered_once_or_merged_with_its_like(weighed, pool):
    lists = (weighed.options, weighed.rejected, weighed.apart)
    answered = [item.treatment.label for answer in lists for item in answer]
    asked_about = [item.treatment.label for item in pool]
    assert len(set(answered)) == len(answered)
    assert set(answered) <= set(asked_about)
    assert {label.split("/")[0] for label in answered} == {
        label.split("/")[0] for label in asked_about
    }


def test_the_best_comes_first(weighed):
    best = max(option.score for option in weighed.options)
    assert weighed.options[0].score >= best - NEAR


@pytest.mark.parametrize("order", ["as it stands", "backwards"])
def test_a_smaller_pool_changes_no_number(job, pool, scorer, weighed, order):
    torched = [item for item in pool if item.treatment.route.slug == "local-torch"]
    less = weigh(job, torched if order == "as it stands" else torched[::-1], scorer)
    whole = {option.id: option for option in weighed.options}
    both = [option for option in less.options if option.id in whole]
    # What is not weighed beside many others is weighed among few.
    spared = {r.treatment.label for r in weighed.rejected if r.gate.name in {"near", "custom"}}
    # Nor does what another of its family and way stands before.
    spared |= {other.treatment.label for other in weighed.beaten}
    assert {o.treatment.label for o in less.options if o not in both} <= spared
    assert both
    for option in both:
        np.testing.assert_array_equal(option.scores, whole[option.id].scores)
        assert option.judged.gates == whole[option.id].judged.gates


def test_progress_names_the_steel_and_rises(job, pool, scorer):
    heard = []
    weigh(job, pool[:40], scorer, lambda text, share: heard.append((text, share)))
    shares = [share for _, share in heard]
    assert shares == sorted(shares)
    assert 0 <= shares[0] <= shares[-1] < 1
    assert all(text.startswith("Weighing ") for text, _ in heard)


def test_an_empty_pool_holds_nothing(job, scorer):
    nothing = weigh(job, (), scorer)
    assert (nothing.options, nothing.rejected, nothing.apart) == ((), (), ())


class Burnt:
    """A model that refuses one steel, and answers for the others as the one it stands for."""

    def __init__(self, model, slug):
        self.model, self.slug = model, slug

    def __call__(self, first, *rest):
        treatment = getattr(first, "treatment", first)
        if treatment.steel.slug == self.slug:
            raise OutOfRangeError(Problem("start", "below 1700 °C", "1717 °C", "Cool it."))
        return self.model(first, *rest)


@pytest.mark.parametrize("name", ["cooled_points", "prepare", "tempers_worth", "best_temper"])
def test_a_model_that_cannot_answer_ends_one_treatment_and_no_more(
    job, pool, scorer, weighed, name, monkeypatch
):
    monkeypatch.setattr(weighing, name, Burnt(getattr(weighing, name), "42crmo4"))
    rest = weigh(job, pool, scorer)
    whole = {option.id: option for option in weighed.options}
    assert rest.options
    for option in rest.options:
        assert option.treatment.steel.slug != "42crmo4"
        if option.id in whole:
            np.testing.assert_array_equal(option.scores, whole[option.id].scores)
    unknown = [item for item in rest.apart if item.gate.name == "model"]
    assert {item.treatment.steel.slug for item in unknown} == {"42crmo4"}
    assert {item.gate.text for item in unknown} == {
        "beyond what is modelled: start must be below 1700 °C, here it is 1717 °C"
    }


NECK = {
    "load.torque": GONE,
    "workshop.heat": [{"source": "oxy-propane"}],
    "part.section": [
        {"shape": "round", "size": "40 mm", "length": "10 mm"},
        {"shape": "round", "size": "3 mm", "length": "40 mm"},
        {"shape": "round", "size": "40 mm", "length": "60 mm"},
    ],
    "zone.1.section": [2, 3],
    "part.feature": [],
}


def test_a_thin_neck_that_burns_behind_a_thick_zone_is_an_answer():
    """Until the zone is red through its thickness, the flame has the neck above 1700 °C."""
    answer = advise(asked(NECK), only("c45", "42crmo4", "115crv3"))
    torched = {"local-torch", "residual-heat"}
    assert not any(o.treatment.route.slug in torched for o in answer.options)
    burnt = [r for r in (*answer.rejected, *answer.apart) if r.treatment.route.slug in torched]
    assert any(item.gate.name in {"model", "heating"} for item in burnt)
    assert "unknown grade" not in headline(answer)
    assert advice_out(answer).part == "drive dog"


def test_what_another_of_its_family_beats_is_kept_as_figures(advice):
    places = {option.treatment.group: option for option in advice.options}
    assert advice.beaten
    for beaten in advice.beaten:
        kept = places[beaten.treatment.group]
        assert beaten.id != kept.id
        assert 0 <= beaten.score <= 1
        if not beaten.stands_back:
            # Near ties may go by ease.
            assert beaten.score <= kept.score + NEAR + 1e-9


def test_what_takes_too_long_is_not_simulated_where_something_serves(monkeypatch):
    """It is turned down as it would be at the end, and worked out where nothing serves."""
    hurry = {"workshop.subcontract": True, "limit.days": "3 days"}
    known = only("c45", "42crmo4", "16mncr5")
    held = {**hurry, "workshop.stock": [{"steel": "C45"}]}
    quick = advise(asked(held), known)
    late = [item for item in quick.rejected if item.gate.name == "days"]
    assert quick.options
    assert all(item.share == 0.0 for item in late if item.treatment.stock is None)
    monkeypatch.setattr(weighing, "_late", lambda *_: None)
    slow = advise(asked(held), known)
    assert [o.id for o in slow.options] == [o.id for o in quick.options]
    gates = {r.treatment.label: r.gate.text for r in slow.rejected if r.gate.name == "days"}
    assert {item.treatment.label: item.gate.text for item in late}.items() >= gates.items()


def test_where_all_take_too_long_how_often_they_come_right_is_known():
    none = advise(asked({"limit.days": "0.5 days"}), only("c45", "42crmo4"))
    assert not none.options
    assert any(item.gate.name == "days" and item.share > 0.5 for item in none.rejected)


def test_a_bar_takes_its_place_by_the_usual_way_of_treating_it():
    wanted = asked(
        {
            "part.name": "Oblong punch for strip",
            "part.section": [
                {"shape": "flat", "size": "4 mm", "width": "12 mm", "length": "14 mm"},
                {"shape": "flat", "size": "12 mm", "width": "20 mm", "length": "45 mm"},
            ],
            "part.feature": [{"kind": "edge", "at": "0 mm"}],
            "zone.0.wear": "edge-impact", "zone.0.hardness": GONE,
            "load": {"impact": "light", "cycles": "fatigue"},
            "workshop.heat": [{"source": "kiln"}, {"source": "kitchen-oven"}],
            "workshop.protect": ["foil"], "workshop.measure": ["thermocouple"],
            "workshop.stock": [{"steel": "D2", "size": "25 mm", "evidence": "certificate"}],
        }
    )  # fmt: skip
    advice = advise(wanted, only("x153crmov12"))
    here = [o for o in advice.options if "through-furnace" in o.treatment.route.slug]
    assert [option.treatment.route.cold_c for option in here] == [None]
    # The cold step would come right more often; the usual way serves.
    assert "through-furnace-cold" in {option.treatment.route.slug for option in advice.outdone}


def test_of_near_ties_of_one_bar_the_more_usual_way_speaks():
    wanted = asked(
        {
            "part.name": "Rivet snap",
            "part.section": [
                {"shape": "round", "size": "8.6 mm", "length": "15 mm"},
                {"shape": "round", "size": "8.6 mm", "length": "65 mm"},
            ],
            "part.feature": [], "load": {"impact": "hammered", "cycles": "occasional"},
            "zone.0.wear": "edge-impact", "zone.0.severity": "heavy",
            "zone.0.hardness": {"min": "52 HRC", "max": "59 HRC"},
            "workshop.heat": [{"source": "hand-torch"}, {"source": "kitchen-oven"}],
            "workshop.bath": [{"medium": "water"}, {"medium": "oil"}],
            "workshop.measure": ["eye"], "workshop.stock": [{"steel": "silver steel"}],
        }
    )  # fmt: skip
    advice = advise(wanted, only("115crv3", "42crmo4"))
    silver = next(o for o in advice.options if o.treatment.steel.slug == "115crv3")
    assert silver.treatment.medium.slug == "water"
    # In oil it comes out as well, and is put there more seldom.
    oiled = next(b for b in advice.beaten if "local-torch.oil" in b.id)
    assert oiled.score > silver.score
