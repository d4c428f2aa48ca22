import pytest

from selector.wording import shown_spread
from ui import labels, table


def test_the_ranking_shows_what_the_selector_found(found):
    frame = table.ranking(found.options, {"oil": "Some oil"})
    first = found.options[0]
    assert list(frame["No."]) == [option.place for option in found.options]
    assert frame["Steel, as bought"][0] == f"**{first.steel}** {first.condition}"
    assert frame["Score"][0] == f"{first.score:.2f}"
    assert "some oil" in frame["Route"][0]
    assert not frame.isna().any().any()


def test_each_demand_has_its_verdict(found):
    option = found.options[0]
    frame = table.demands(option)
    assert list(frame["Met"]) == [labels.words(gate.verdict) for gate in option.gates]


def test_the_cost_items_are_those_of_the_bill(found):
    frame = table.cost_items(found.options[0])
    assert [float(text) for text in frame["EUR"]] == list(found.options[0].cost.items.values())


def test_all_criteria_are_shown_and_weights_add_up(found):
    frame = table.criteria(found.options[0], found.ranges)
    assert len(frame) == len(found.ranges) == len(table.ranges(found))
    assert sum(int(text.split()[0]) for text in frame["Weight"]) == pytest.approx(100, abs=3)


def test_predictions_carry_their_range(found):
    frame = table.predicted(found.options[0])
    assert frame.iloc[0, 1] == shown_spread(found.options[0].hardness.surface)


def test_the_window_asked_is_shown(found):
    frame = table.asked(found)
    assert frame["Hardness aimed at"][0] == "50 to 56 HRC"
    assert frame["Hardness aimed at"][1] == "none"


def test_every_rejected_route_is_counted_once(found):
    counts = table.gate_counts(found.rejected)
    assert sum(counts.values()) == len(found.rejected)
    for gate, count in counts.items():
        assert table.rejected(found, gate)["Count"].sum() == count


def test_reasons_that_differ_by_the_steel_alone_are_one(found):
    reasons = list(table.rejected(found, "response")["Reason"])
    assert len(reasons) == len(set(reasons))
    assert sum("no case" in text for text in reasons) == 1


def test_nearest_misses_come_nearest_first(found):
    shares = [int(text.split()[0]) for text in table.nearest(found)["Meets every demand"]]
    assert shares == sorted(shares, reverse=True)


def test_what_is_apart_says_what_to_find_out(found):
    assert len(table.apart(found)) == len({(a.steel, a.text, a.find_out) for a in found.apart})


def test_methods_name_options_by_their_place(found):
    frame = table.methods(found)
    assert list(frame["Method"]) == [method.method for method in found.other_methods]
    agreeing = frame[frame["Same first"] == "yes"].iloc[:, 2]
    assert all(text.startswith("1 ·") for text in agreeing)


def test_pairwise_shares_of_two_add_up(found):
    frame = table.pairwise(found)
    above, below = int(frame["above 2"][0]), int(frame["above 1"][1])
    assert frame["above 1"][0] == "–"
    assert 99 <= above + below <= 101


def test_cautions_keep_their_step(found):
    steps = table.by_step(found)
    assert sum(map(len, steps.values())) == len(found.cautions)
    assert found.cautions[0].text in steps[found.cautions[0].step]
