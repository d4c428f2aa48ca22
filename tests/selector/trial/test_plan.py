"""Plans of trials: the dog's options, what is new, what cracks, what is not hardened."""

import itertools

import pytest

from selector.errors import RequirementError
from selector.job.job import resolved
from selector.option.cost import coupon_cost, order_of
from selector.trial.coupon import to_five
from selector.trial.plan import plan
from selector.trial.record import TrialPlanOut
from selector.trial.subject import question
from selector.trial.words import card_lines, size_words, worth
from selector.versus.side import judged_option
from tests.dog import asked, only
from tests.once import advised

TRIED = ("42crmo4", "c45", "115crv3", "16mncr5", "s235")


@pytest.fixture(scope="module")
def dog():
    return advised(None, *TRIED)


def torched(advice):
    """Return the first option that is heated by torch."""
    return next(o for o in advice.options if o.treatment.route.slug == "local-torch")


def test_every_option_has_a_trial_that_can_fail_and_is_priced(dog):
    for option in dog.options:
        made = plan(dog.job, option)
        assert [c.number for c in made.coupons] == list(range(1, len(made.coupons) + 1))
        assert 1 <= len(made.coupons) <= 4
        assert sum(r.counted for r in made.readings) == 1
        assert all(r.go and r.no_go for r in made.readings)
        shares = made.forecast.by_count
        assert all(0.0 <= a <= b <= 1.0 for a, b in itertools.pairwise(shares))
        assert made.forecast.narrowing == shares[len(made.coupons) - 1]
        width = made.forecast.p95 - made.forecast.p05
        assert made.forecast.width_after == pytest.approx(
            width * (1 - made.forecast.narrowing), rel=0.01, abs=0.02
        )
        assert made.id == f"{option.id}/{made.subject}"
        assert any(size_words(made.coupons[0]) in step for step in made.steps)


def test_another_coupon_would_hardly_add(dog):
    made = plan(dog.job, torched(dog))
    shares, count = made.forecast.by_count, len(made.coupons)
    assert count == 4 or shares[count] - shares[count - 1] < 0.04
    assert all(shares[n] - shares[n - 1] >= 0.04 for n in range(1, count))


def test_what_it_costs_is_what_the_bill_calls_a_coupon(dog):
    option = torched(dog)
    made, bill = plan(dog.job, option), option.judged.prediction.bill
    one = coupon_cost(option.treatment, option.choice.temper, order_of(dog.job), 0.0)
    assert made.cost.total == pytest.approx(len(made.coupons) * one, abs=0.01)
    assert made.cost.counted_in_price == pytest.approx(bill.items["coupon"], abs=0.01)


@pytest.mark.parametrize(
    ("new", "subject", "said"),
    [
        ("bar", "bar", "sparks"),
        ("torch", "heat", "gas and distance"),
        ("bath", "bath", "Stir the same"),
        ("oven", "temper", "beside the coupons"),
    ],
)
def test_each_new_thing_has_its_own_plan(dog, new, subject, said):
    made = plan(dog.job, torched(dog), new)
    assert (made.subject, made.asked_for) == (subject, new)
    assert said in " ".join(made.steps)
    assert "is new" in made.why
    text = " ".join(made.steps)
    order = (
        "Saw ",
        "Harden ",
        "before the temper",
        "as quenched",
        "temper ",
        "After the temper",
    )
    places = [text.index(words) for words in order[:3]]
    places += [text.index(words, places[-1]) for words in order[3:]]
    assert places == sorted(places)


def test_what_an_option_does_not_use_cannot_be_new():
    soft = advised({"zone.0.hardness": {"max": "40 HRC"}, "zone.0.wear": "none"}, "s235", "c45")
    option = next(o for o in soft.options if o.treatment.route.process == "none")
    for new in ("torch", "bath", "oven"):
        with pytest.raises(RequirementError, match=f"--new.*{option.id}"):
            plan(soft.job, option, new)
    made = plan(soft.job, option)
    assert [r.stage for r in made.readings] == ["bar"]
    assert made.cost.total == 0.0


def test_a_better_test_narrows_more():
    shares = []
    for check in (["glass"], ["file"], ["file", "tester"]):
        job = resolved(asked({"workshop.check": check}), only("42crmo4"))
        option = judged_option("42crmo4/annealed/local-torch.oil/oven-225c-60min", job)
        shares.append(plan(job, option).forecast.by_count[0])
    assert shares == sorted(shares)
    assert shares[0] < shares[-1]


def test_a_bar_without_paper_is_what_is_tried_first():
    stock = [{"steel": "42CrMo4", "size": "30 mm"}]
    found = advised({"workshop.stock": stock, "workshop.only_stock": True}, "42crmo4")
    made = plan(found.job, found.options[0])
    assert (made.subject, made.asked_for) == ("bar", "unproved")
    assert "rack" in made.coupons[0].bar


def test_a_bath_is_judged_by_how_deep_it_hardens(dog):
    shallow = next(o for o in dog.options if not o.judged.prediction.hard_through
                   and o.treatment.hardens and o.treatment.medium)  # fmt: skip
    made = plan(dog.job, shallow, "bath")
    assert made.forecast.quantity == "depth_mm"
    assert next(r for r in made.readings if r.counted).stage == "snapped"


def test_where_it_fails_by_cracks_a_few_coupons_teach_little():
    bath = {"workshop.bath": [{"medium": "water"}]}
    easy = {**bath, "zone.0.hardness": {"min": "40 HRC"}}
    job = resolved(asked({**easy, "part.feature": [{"kind": "sharp-corner"}]}), only("115crv3"))
    option = judged_option("115crv3/annealed/local-torch.water/oven-225c-60min", job)
    made = plan(job, option)
    assert (made.subject, made.forecast.quantity) == ("crack", "crack_rate")
    assert 0.0 < made.forecast.narrowing < 0.3
    assert made.forecast.go < 0.9
    assert "holes, steps and corners" in " ".join(made.steps)


def test_a_plan_reads_back_from_its_data(dog):
    made = plan(dog.job, torched(dog))
    assert TrialPlanOut.model_validate_json(made.model_dump_json()) == made


def test_a_coupon_of_a_zone_has_steel_behind_it(dog):
    option = torched(dog)
    section = dog.job.asked.part.section[0]
    coupon = plan(dog.job, option).coupons[0]
    assert (coupon.shape, coupon.size_mm) == ("round", section.size)
    assert coupon.length_mm >= section.length + 2 * section.size
    assert coupon.length_mm % 5 == 0
    assert to_five(40.0) == 40.0
    assert to_five(40.1) == 45.0


def test_the_question_names_the_errors_that_move_the_forecast_most(dog):
    for option in dog.options:
        asks = question(dog.job, option)
        if asks.subject != "crack" and asks.asked_for is None:
            assert f"{100 * asks.parts.share[asks.subject]:.0f} in 100" in asks.why


def test_the_block_on_the_card_is_short_and_leaves_go_and_stop_to_its_steps(dog):
    made = plan(dog.job, torched(dog))
    lines = card_lines(made)
    assert 2 <= len(lines) <= 4
    assert "coupon" in lines[0]
    alone = [r for r in made.readings if r.stage in {"snapped", "crack"}]
    assert alone
    assert [text.count("Stop:") for text in lines].count(1) == len(alone)
    assert all(any(r.go in text and r.no_go in text for text in lines) for r in alone)
    assert max(map(len, lines)) < 260


def test_a_trial_says_what_it_is_worth(dog):
    text = " ".join(worth(plan(dog.job, torched(dog))))
    assert "Costs about" in text
    assert "narrow" in text
    assert "It says go" in text


def test_one_coupon_is_spoken_of_as_one_and_costs_what_an_offcut_does():
    advice = advised({"workshop.subcontract": True}, *TRIED)
    sent = next(o for o in advice.options if o.treatment.route.place == "subcontract")
    made = plan(advice.job, sent)
    each = "it" if len(made.coupons) == 1 else "each"
    assert made.steps[1].startswith(f"Send {each} with the part as a witness piece")
    if made.cost.total < 0.5:
        assert "Costs no more than the offcut." in worth(made)
