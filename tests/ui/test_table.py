import pytest

from selector.wording import condition_words, shown_spread
from ui import labels, table


def test_the_ranking_shows_what_the_selector_found(advice):
    frame = table.ranking(advice.options, {"oil": "Some oil"})
    first = advice.options[0]
    assert list(frame["No."]) == [option.place for option in advice.options]
    assert (
        frame["Steel, as bought"][0]
        == f"**{first.spoken}**, {condition_words(first.condition)}"
    )
    assert frame["Score"][0] == f"{first.score:.2f}"
    assert "some oil" in frame["Route"][0]
    assert not frame.isna().any().any()


def test_each_demand_has_its_verdict(advice):
    option = advice.options[0]
    frame = table.demands(option)
    assert list(frame["Met"]) == [labels.words(gate.verdict) for gate in option.gates]


def test_the_cost_items_are_those_of_the_bill(advice):
    frame = table.cost_items(advice.options[0])
    assert [float(text) for text in frame["EUR"]] == list(advice.options[0].cost.items.values())


def test_all_criteria_are_shown_and_weights_add_up(advice):
    frame = table.criteria(advice.options[0], advice.ranges)
    assert len(frame) == len(advice.ranges) == len(table.ranges(advice))
    assert sum(int(text.split()[0]) for text in frame["Weight"]) == pytest.approx(100, abs=3)


def test_predictions_carry_their_range(advice):
    frame = table.predicted(advice.options[0])
    assert frame.iloc[0, 1] == shown_spread(advice.options[0].hardness.surface)


def test_the_window_asked_is_shown(advice):
    frame = table.asked(advice)
    assert frame["Hardness aimed at"][0] == "50 to 56 HRC"
    assert frame["Hardness aimed at"][1] == "none"


def test_every_rejected_route_is_counted_once(advice):
    counts = table.gate_counts(advice.rejected)
    assert sum(counts.values()) == len(advice.rejected)
    for gate, count in counts.items():
        assert table.rejected(advice, gate)["Count"].sum() == count


def test_reasons_that_differ_by_the_steel_alone_are_one(advice):
    reasons = list(table.rejected(advice, "response")["Reason"])
    assert len(reasons) == len(set(reasons))
    assert sum("no case" in text for text in reasons) == 1


def test_nearest_misses_come_nearest_first(advice):
    shares = [int(text.split()[0]) for text in table.nearest(advice)["Comes out right"]]
    assert shares == sorted(shares, reverse=True)


def test_what_is_apart_says_what_to_find_out(advice):
    assert len(table.apart(advice)) == len(
        {(a.steel, a.text, a.find_out) for a in advice.apart}
    )


def test_methods_name_options_by_their_place(advice):
    frame = table.methods(advice)
    assert list(frame["Method"]) == [method.method for method in advice.other_methods]
    agreeing = frame[frame["Same first"] == "yes"].iloc[:, 2]
    assert all(text.startswith("1 ·") for text in agreeing)


def test_pairwise_shares_of_two_add_up(advice):
    frame = table.pairwise(advice)
    above, below = int(frame["above 2"][0]), int(frame["above 1"][1])
    assert frame["above 1"][0] == "–"
    assert 99 <= above + below <= 101


def test_cautions_keep_their_step(advice):
    steps = table.by_step(advice)
    assert sum(map(len, steps.values())) == len(advice.cautions)
    assert advice.cautions[0].text in steps[advice.cautions[0].step]
