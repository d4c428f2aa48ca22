import pytest

from selector.errors import OutOfRangeError, Problem, RequirementError, SelectorError

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
