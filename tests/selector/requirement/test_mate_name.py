from selector.requirement.mate_name import (
    is_bearing,
    is_ferrous,
    is_harmless,
    is_metal,
    is_no_metal,
    is_of,
    is_slippery,
    is_soft_work,
    is_soil,
    is_stony,
    is_worked,
    yields,
)


def test_sand_and_mortar_have_stones_in_them():
    assert is_stony("sand and mortar joints")
    assert not is_stony("sandpaper")


def test_wood_and_clay_are_no_metal_and_a_horn_of_brass_is():
    assert is_no_metal("seasoned box wood")
    assert is_no_metal("clay")
    assert not is_no_metal("brass horn")


def test_wax_and_brass_wear_no_gauge_and_silver_steel_does():
    assert is_soft_work("wax patterns")
    assert is_soft_work("brass plate")
    assert not is_soft_work("silver steel")
    assert not is_soft_work("planer knives")


def test_a_mate_may_be_the_ground_or_metal_that_is_worked():
    assert is_soil("mud and stones")
    assert not is_soil("soiled linen")
    assert is_worked("steel sheet 1.2 mm")
    assert not is_worked("steel pin")
    assert is_metal("brass")
    assert not is_metal("boxwood")
    assert is_ferrous("cast iron")


def test_steel_runs_in_wood_and_bronze_and_cast_iron_and_plastic_yields():
    for material in ("gunmetal", "teak", "cast-iron block", "acetal"):
        assert is_bearing(material)
        assert is_slippery(material)
    assert not is_bearing("steel pin")
    assert yields("felt washers")
    assert not yields("brass")


def test_leather_and_lead_dent_no_tool_and_brass_does():
    assert is_harmless("leather strap")
    assert is_harmless("lead seals")
    assert not is_harmless("brass eyelets")


def test_an_eyelet_is_no_eye():
    assert is_of("spring eye", "bush")
    assert not is_of("brass eyelets", "bush")
