"""A bar of unknown make in the rack: its likely steels drawn by their chances."""

import pytest

from selector.advice.headline import headline
from selector.advice.mixture import SERVES, mixture, worth_a_coupon
from selector.advice.rack import rack
from selector.decision.option import scorer_of
from selector.decision.weighing import weigh
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.option.reference_bar import reference_cost
from tests.dog import asked, only
from tests.once import advised

LEAF = ("5160", "55cr3", "51crv4", "56si7", "54sicr6", "250a53", "9260", "old-leaf-spring")
KNOWN = ("42crmo4", *LEAF)


def of_leaf(**changes):
    """Return the advice on the dog with an old leaf spring in the rack, and its mixture."""
    found = advised({"workshop.stock": [{"steel": "old leaf spring"}], **changes}, *KNOWN)
    return found, mixture(found, found.job.bench.stock[0])


def test_a_mixture_is_its_steels_each_by_its_chance():
    found, mixed = of_leaf()
    shares = {one.steel.slug: one.share for one in mixed.likely}
    held = found.job.bench.stock[0].steel
    assert shares == {g.steel: g.share.value for g in held.likely if g.steel in KNOWN}
    expected = sum(one.share * one.comes_right for one in mixed.likely) / sum(shares.values())
    assert mixed.comes_right == pytest.approx(expected)
    assert min(o.comes_right for o in mixed.likely) <= mixed.comes_right
    assert mixed.comes_right <= max(o.comes_right for o in mixed.likely)


def test_each_steel_comes_right_as_often_as_a_bar_of_it_in_the_rack():
    """One engine: the bar as 5160 is weighed as a bar of 5160 is."""
    _, mixed = of_leaf()
    racked = {"workshop.stock": [{"steel": "5160", "condition": "annealed"}]}
    wanted, known = asked(racked), only("5160")
    job = resolved(wanted, known)
    pool = [
        item
        for item in screened(wanted, known, job.bench)
        if item.treatment.stock is not None
        and item.treatment.medium is not None
        and item.treatment.medium.slug == mixed.medium.slug
        and item.treatment.route.process == "quench"
    ]
    weighed = weigh(job, pool, scorer_of(job, reference_cost(job)), whole=True)
    best = [o.judged.passing_all for o in (*weighed.options, *weighed.outdone)]
    best += [item.share for item in weighed.rejected]
    (mine,) = [one.comes_right for one in mixed.likely if one.steel.slug == "5160"]
    assert any(mine == pytest.approx(share) for share in best)


def test_the_rack_says_how_often_an_unknown_bar_comes_right():
    found, mixed = of_leaf()
    (bar,) = rack(found)
    assert bar.verdict == "unknown"
    assert "likely 5160 (40 in 100)" in bar.why
    assert f"quenched in {mixed.medium.slug} and tempered as its coupon tells" in bar.why
    assert f"{round(100 * mixed.comes_right)} times in 100; were it 5160" in bar.why


def test_a_bar_that_is_known_or_with_nothing_hardened_beside_it_has_no_mixture():
    known = advised({"workshop.stock": [{"steel": "42CrMo4"}]}, *KNOWN)
    assert mixture(known, known.job.bench.stock[0]) is None
    soft = {"zone.0.hardness": None, "zone.0.wear": "none", "load.torque": None}
    idle, mixed = of_leaf(**{"workshop.heat": [{"source": "kitchen-oven"}], **soft})
    assert not [o for o in idle.options if o.treatment.route.process == "quench"]
    assert mixed is None


EDGE = {
    "part.feature": [{"kind": "edge", "at": "0 mm"}], "zone.0.wear": "edge-impact",
    "load.impact": "hammered", "load.torque": None, "load.bending": None,
}  # fmt: skip


def test_an_unknown_bar_that_serves_whatever_it_is_is_tried_before_one_is_ordered():
    found, mixed = of_leaf(**EDGE)
    assert mixed.comes_right >= SERVES
    assert worth_a_coupon(found)[0] is found.job.bench.stock[0]
    said = headline(found)
    assert said.startswith("From the rack, a coupon first: old leaf spring, quenched in ")
    assert "whatever it is. If not that, " in said


def test_a_known_bar_of_the_rack_or_a_part_left_soft_asks_for_no_coupon():
    bars = [{"steel": "old leaf spring"}, {"steel": "60WCrV8", "evidence": "receipt"}]
    known = advised({"workshop.stock": bars, **EDGE}, *KNOWN, "60wcrv8")
    assert known.options[0].treatment.stock is not None
    soft = {"zone.0.wear": "none", "part.feature": [], "zone.0.hardness": None}
    plain = advised({"workshop.stock": bars[:1], **soft}, *KNOWN)
    assert worth_a_coupon(known) is worth_a_coupon(plain) is None
