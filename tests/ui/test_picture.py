import re

from catalog import load_catalog
from ui import picture


def sizes_on(drawing):
    """The numbers that stand on a drawing."""
    return set(re.findall(r">[ØR]?([\d.]+)<", drawing))


def test_a_part_is_drawn_in_the_unit_it_was_given_in(claw):
    first, second = claw["part"]["section"]
    known = load_catalog()
    in_mm = picture.of_draft(claw, known)
    assert "30" in sizes_on(in_mm)
    first |= {"size": "1 in", "length": "1 1/4 in"}
    second |= {"size": "3/4 in", "length": "3 in"}
    in_inches = picture.of_draft(claw, known)
    assert {"1.25", "3", "4.25"} <= sizes_on(in_inches)
    assert "31.75" not in sizes_on(in_inches)
