import pytest

from selector.requirement import trade_name

SAYS = [
    (trade_name.cuts_crops, "Chaff knife, 300 mm", "Chaff bin latch"),
    (trade_name.cuts_crops, "Reciprocating mower knife section", "Rotary mower blade"),
    (trade_name.is_thin_blade, "Cabinet scraper, 0.8 mm", "Sawhorse"),
    (trade_name.is_thin_blade, "Dovetail saw, 0.5 mm", "Saw frame"),
    (trade_name.is_keen, "Plane iron, 3 mm", "Plane iron holder"),
    (trade_name.is_keen, "Scriber, 4 mm", "Clamp for a scriber"),
    (trade_name.turns_by_hand, "Chuck key square, 8 mm", "Gib key, 8 mm"),
    (trade_name.turns_by_hand, "Socket of a tuning lever", "Ball of a hitch"),
    (trade_name.turns_screws, "Turnscrew for a gunlock", "Socket for a bulb"),
    (trade_name.pushes, "Firing pin, 6 mm", "Pin punch, 6 mm"),
    (trade_name.backs, "Dolly for a panel beater", "Trolley axle"),
    (trade_name.bends_metal, "Press-brake top tool", "Blanking die"),
    (trade_name.bends_metal, "Vee die of a bending brake", "Die for brake discs"),
    (trade_name.is_dog, "Coin-slide pawl", "Beading tool"),
    (trade_name.is_cam, "Cam for a side-valve engine", "Camera bracket"),
]


@pytest.mark.parametrize(("says", "is_one", "is_none"), SAYS)
def test_a_name_says_what_a_tool_is(says, is_one, is_none):
    assert says(is_one)
    assert not says(is_none)


def test_what_a_part_is_for_is_not_what_it_is():
    assert not trade_name.is_cam("Spanner for a cam follower")
    assert not trade_name.backs("Rack for dollies")
