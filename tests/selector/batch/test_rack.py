"""The fewest bars, and the loads that parts share."""

import pytest

from selector.batch.load import groups, loads
from selector.batch.rack import rack, rule_words
from selector.batch.record import HeatRunOut, PartOut, ServingOut


def part(bars, size=10.0, heats=()):
    """Return a part served by bars of these scores, the first choice first."""
    made = tuple(
        ServingOut(
            steel_slug=s, spoken=s, condition="annealed", id=f"{s}/x", score=v, size_mm=size
        )
        for s, v in bars.items()
    )
    return PartOut(
        key="k", part="p", quantity=1, reason="harden", text="", bars=made, heats=heats
    )


def heat(low, high, least=20.0, most=30.0, **other):
    given = {"kind": "harden", "by": "muffle-furnace", "then": "oil", **other}
    return HeatRunOut(
        low_c=low, high_c=high, aim_c=(low + high) / 2, least_min=least, most_min=most, **given
    )


PARTS = {
    "a": part({"c45": 0.60, "o1": 0.58}),
    "b": part({"42crmo4": 0.50, "o1": 0.46}, size=20.0),
    "c": part({"o1": 0.40, "c45": 0.30}),
    "d": part({}),
}


def test_one_bar_serves_what_it_serves_within_the_loss():
    found = rack(PARTS, 0.05)
    assert [bar.steel_slug for bar in found.bars] == ["o1"]
    losses = {served.place: served.loss for served in found.bars[0].serves}
    assert losses == pytest.approx({"a": 0.02, "b": 0.04, "c": 0.0})
    assert found.bars[0].thickest_mm == (10.0, 20.0)
    assert (found.fewest, found.not_served) == (True, ("d",))
    assert "0.05 less" in rule_words(0.05) == found.rule or "0.05 less" in found.rule


def test_without_a_loss_each_has_its_first_choice():
    assert {bar.steel_slug for bar in rack(PARTS, 0.0).bars} == {"c45", "42crmo4", "o1"}


def test_between_as_few_bars_the_better_ones_are_taken():
    parts = {"a": part({"x": 0.5, "y": 0.5, "z": 0.46}), "b": part({"y": 0.5, "z": 0.49})}
    assert [bar.steel_slug for bar in rack(parts, 0.05).bars] == ["y"]


def test_nothing_is_lost_with_a_bar_that_scores_more_than_the_first_choice():
    (bar,) = rack({"a": part({"x": 0.50, "y": 0.52}), "b": part({"y": 0.5})}, 0.05).bars
    assert [(served.place, served.loss) for served in bar.serves] == [("a", 0.0), ("b", 0.0)]


def test_no_parts_need_no_bars():
    assert rack({}).bars == ()


def test_parts_share_a_load_where_heat_and_hold_agree():
    runs = [
        ("a", heat(800, 830)), ("b", heat(820, 860)), ("c", heat(840, 880)),
        ("d", heat(815, 850, 40.0, 50.0)),
    ]  # fmt: skip
    assert [[place for place, _ in group] for group in groups(runs)] == [
        ["a", "b"],
        ["d"],
        ["c"],
    ]


def test_a_load_has_a_heat_and_a_hold_that_serve_all_of_it():
    parts = {
        "a": part({}, heats=(heat(800, 830), heat(200, 250, 60, 60, kind="temper", by="oven"))),
        "b": part({}, heats=(heat(820, 860, 25.0, 35.0),)),
        "c": part({}, heats=(heat(820, 860, then="warm-water"),)),
        "d": part({}, heats=(heat(225, 300, 60, 60, kind="temper", by="oven"),)),
    }
    harden, temper = loads(parts)
    assert (harden.places, harden.range_c, harden.hold_min) == (("a", "b"), (820, 830), 25.0)
    assert 820 <= harden.temperature_c <= 830
    assert (temper.places, temper.range_c) == (("a", "d"), (225, 250))


@pytest.mark.parametrize(("low", "high", "set_to"), [(841, 843, 841), (837, 838, 838)])
def test_a_load_is_set_by_fives_only_where_one_serves(low, high, set_to):
    (load,) = loads({place: part({}, heats=(heat(low, high),)) for place in "ab"})
    assert load.temperature_c == set_to


def test_every_run_stands_in_one_group():
    runs = [
        (str(k), heat(800 + 7 * k % 40, 850 + 11 * k % 30, 10 + k % 5, 20)) for k in range(30)
    ]
    placed = sorted(place for group in groups(runs) for place, _ in group)
    assert placed == sorted(place for place, _ in runs)
    for group in groups(runs):
        low, high = max(h.low_c for _, h in group), min(h.high_c for _, h in group)
        least, most = max(h.least_min for _, h in group), min(h.most_min for _, h in group)
        assert low <= high
        assert least <= most
