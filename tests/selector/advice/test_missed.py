from selector import advise
from selector.advice import change
from selector.advice.altered import thought_of
from selector.advice.missed import BARS, certified_bars, nearest_misses, rejected_lines
from selector.advice.output import advice_out
from selector.requirement import requirement_from
from tests.dog import only
from tests.page_server import racked

# The steels of that rack; no other can be had.
RACKED = ("42crmo4", "115crv3", "c45")


def out_of(changes, *steels, changed=False):
    known = only(*steels) if steels else None
    return advice_out(advise(requirement_from(racked(changes)), known), changed=changed)


def test_what_came_nearest_and_what_stops_the_rest_are_lines():
    advice = out_of({"zone.0.hardness.min": "63 HRC", "zone.0.hardness.max": "64 HRC"})
    assert advice.verdict == "no_option", advice.apart
    assert 1 <= len(nearest_misses(advice)) <= 5
    lines = rejected_lines(advice.rejected, set(), coded=False)
    assert lines
    assert not any(
        line.startswith(f"{item.gate}: ") for line in lines for item in advice.rejected
    )


def test_where_money_stops_all_the_cheapest_comes_nearest_and_its_sum_is_named(monkeypatch):
    # Of the changes that are thought of the money is the last, and it alone is looked at here.
    monkeypatch.setattr(change, "thought_of", lambda advice: [*thought_of(advice)][-1:])
    advice = out_of({"limit.budget": 20, "limit.currency": "EUR"}, *RACKED, changed=True)
    assert advice.verdict == "no_option"
    first, *_ = nearest_misses(advice)
    money = [item for item in advice.rejected if item.gate == "budget" and item.share >= 0.5]
    cheapest = min(money, key=lambda item: item.cost)
    assert f"costs about {cheapest.cost:.0f} of the 20 EUR" in first
    assert "from the rack" in first
    lets_in = [made.text for made in advice.changes if made.text.startswith("With ")]
    assert any(" EUR: " in text for text in lets_in)


def test_only_bar_that_nobody_hardens_is_named_of_a_part_that_is_passed_on():
    bars = certified_bars(out_of({"safety_use": "brake"}))
    assert len(bars) <= BARS
    assert all("HRC" in bar or "HB" in bar for bar in bars)


def test_a_bar_known_by_its_receipt_wants_its_certificate():
    rod = {"zone.0.hardness": None, "load.torque": None, "safety_use": "brake"}
    bars = certified_bars(out_of(rod))
    assert any("4140" in bar and "with its certificate" in bar for bar in bars)
    assert any("C45" in bar and "ask for its certificate" in bar for bar in bars)
    proved = ["with its certificate" in bar for bar in bars]
    assert proved == sorted(proved, reverse=True)
