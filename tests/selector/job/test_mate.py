import pytest

from selector.job import mate
from tests.dog import asked


def on(material, should_wear="mate", **more):
    """Return a zone that runs on a mate."""
    said = {"material": material, "should_wear": should_wear, **more}
    return asked({"zone.0.mate": said}).zone[0]


@pytest.mark.parametrize(("says", "is_one", "is_none"), [
    (mate.spares_bearing, "bronze wheel", "steel wheel"),
    (mate.spares_bearing, "oak bearings", "ashlar"),
    (mate.runs_in_bush, "gunmetal bush", "brass wheel"),
    (mate.yields, "nylon rollers", "oak"),
    (mate.is_harmless, "oak and lead", "leaded steel"),
    (mate.is_ductile, "copper sheet", "tinplate"),
    (mate.is_tender, "block ice", "price tags"),
    (mate.is_stone, "agate plane", "stony soil"),
    (mate.on_jewel, "ruby hole", "brass hole"),
    (mate.polishes, "fine silver", "silver steel"),
    (mate.outlasts_steel, "steel pallets", "cast iron"),
    (mate.outlasts_steel, "mild sheet", "copper sheet"),
    (mate.outlasts_steel, "silver steel", "fine silver"),
    (mate.is_track, "needle rollers", "ballast"),
])  # fmt: skip
def test_the_words_for_a_mate_say_what_it_does(says, is_one, is_none):
    assert says(on(is_one))
    assert not says(on(is_none))


def test_bearing_metal_that_is_to_be_spared_is_not_to_wear():
    assert not mate.spares_bearing(on("bronze bush", "part"))


def test_a_mate_is_soft_by_its_figure_before_its_metal():
    assert mate.is_soft(on("steel rail", hardness="180 HB").mate)
    assert mate.is_soft(on("cast iron").mate)
    assert not mate.is_soft(on("cast iron", hardness="50 HRC").mate)


def test_a_mate_to_be_spared_is_soft_up_to_plain_bar_and_softer_than_steel_below_it():
    bar, brass, hard = (on("ring", "part", hardness=h) for h in ("200 HB", "80 HB", "50 HRC"))
    assert mate.soft_mate_hrc(bar) is not None
    assert mate.soft_mate_hrc(hard) is None
    assert mate.is_softer_than_steel(brass)
    assert not mate.is_softer_than_steel(bar)


def test_a_mate_is_hardened_by_its_figure_unless_it_is_to_be_spared():
    assert mate.is_hard(on("collets", "either", hardness="58 HRC"))
    assert not mate.is_hard(on("collets", "part", hardness="58 HRC"))
    assert mate.runs_on_hard(on("collets", "part", hardness="58 HRC"))
    assert not mate.runs_on_hard(on("collets", "part", hardness="30 HRC"))
    assert not mate.is_hard(on("hardened collets"))
