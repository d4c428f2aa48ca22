"""Cells of a list laid over a part."""

import pytest

from selector.batch.laid import carried_columns, faulty_columns, over
from selector.errors import RequirementError
from selector.requirement import requirement_from
from tests.dog import varied


def laid(**cells):
    return requirement_from(over(varied(), {k.replace("__", "."): v for k, v in cells.items()}))


def test_cells_become_what_their_fields_take():
    asked = laid(
        part__quantity="3", part__section__1__size="30", load__torque="12 N m",
        workshop__only_stock="yes", workshop__stock__1__steel="4140", zone__2__section="[1, 2]",
        limit__budget="99.5", name="1045",
    )  # fmt: skip
    assert asked.part.name == "1045"
    assert (asked.part.quantity, asked.part.section[0].size) == (3, 30.0)
    assert asked.load.torque == 12.0
    assert asked.workshop.only_stock
    assert asked.workshop.stock[0].steel == "4140"
    assert asked.zone[1].section == (1, 2)
    assert asked.limit.budget == 99.5


def test_the_file_itself_is_left_alone():
    data = varied()
    assert over(data, {}) is data
    over(data, {"quantity": "7"})
    assert "quantity" not in data["part"]


@pytest.mark.parametrize("head", ["part.section.9.size", "part.section.0.size", "part.name.1"])
def test_a_cell_past_the_end_or_in_no_table_names_its_column(head):
    with pytest.raises(RequirementError, match=rf"^{head} must be a field of its part file"):
        over(varied(), {head: "3"})


def test_a_wrong_value_is_said_by_its_field():
    with pytest.raises(RequirementError, match=r"part\.quantity must be .*got 'three'"):
        laid(part__quantity="three")


def test_heads_without_a_dot_are_carried_and_those_with_one_are_fields():
    heads = ["file", "name", "order no", "zone.1.wear", "priorities.points.cost"]
    assert carried_columns(heads) == ("order no",)
    assert faulty_columns(heads, "list.csv") == []
    assert "workshop.stock.1.analysis.C" in str(
        faulty_columns(["workshop.stock.1.analysis.c"], "l")[0]
    )
