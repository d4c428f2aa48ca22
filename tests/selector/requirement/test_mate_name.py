from selector.requirement.mate_name import is_no_metal, is_soft_work, is_stony


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
