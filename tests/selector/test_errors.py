import numpy as np
import pytest

from selector.errors import (
    OutOfRangeError,
    Problem,
    RequirementError,
    SelectorError,
    demand,
    limits_left,
    positive,
)

BORE = Problem("bore", "less than 20 mm", "25 mm", "Check bore and size.")
SIZE = Problem("size", "more than 0", "-1 mm", "Check the figure.")


def test_problem_reads_field_rule_value_next_step():
    assert str(BORE) == "bore must be less than 20 mm; got 25 mm. Check bore and size."


def test_error_lists_every_problem_on_its_own_line():
    error = RequirementError(BORE, SIZE)
    assert error.problems == (BORE, SIZE)
    assert str(error).splitlines() == [str(BORE), str(SIZE)]


@pytest.mark.parametrize("kind", [RequirementError, OutOfRangeError])
def test_one_except_catches_all(kind):
    with pytest.raises(SelectorError, match="bore must be less than 20 mm; got 25 mm"):
        raise kind(BORE)


def test_a_demand_names_the_first_value_that_breaks_it():
    with pytest.raises(OutOfRangeError, match=r"size must be below 3; got 5 mm"):
        demand(
            np.array([True, False, False]), "size", "below 3", np.array([1.0, 5.0, 7.0]), "mm"
        )
    demand(np.array([True, True]), "size", "below 3", np.array([1.0, 2.0]))


@pytest.mark.parametrize("value", [0.0, -1.0, float("nan")])
def test_what_is_not_above_zero_is_refused(value):
    with pytest.raises(OutOfRangeError, match=r"size_mm must be above 0; got (0|-1|nan) mm"):
        positive("size_mm", value, "mm")
    assert positive("size_mm", [1, 2]).tolist() == [1.0, 2.0]


def test_limits_left_name_every_quantity_and_no_next_step():
    error = OutOfRangeError(
        Problem("start", "below 1700 °C", "1717 °C", "Cool it."),
        Problem("depth", "above 0 mm", "0 mm", "Go deeper."),
    )
    assert limits_left(error) == (
        "start must be below 1700 °C, here it is 1717 °C; "
        "depth must be above 0 mm, here it is 0 mm"
    )
