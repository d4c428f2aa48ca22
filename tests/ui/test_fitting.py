"""What a file may bring into the form."""

import pytest

from tests.whole_requirement import draft_number
from ui import draft as drafts
from ui import fitting


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("workshop.turns_part", "perhaps"),
        ("part.section.1.shape", 4),
        ("workshop.check", "file"),
        ("part.name", "x" * 300),
    ],
)
def test_what_the_form_cannot_show_is_unfit(claw, path, value):
    assert fitting.unfit(claw) == ()
    drafts.put(claw, path, value)
    assert [problem.field for problem in fitting.unfit(claw)] == [path]


def test_a_slip_of_typing_is_left_to_the_form(claw):
    drafts.put(claw, "load.torque", "90 apples")
    drafts.put(claw, "part.quantity", "few")
    assert fitting.unfit(claw) == ()


def test_any_draft_of_the_form_fits_and_no_other_shape(claw):
    assert fitting.fits(drafts.blank())
    assert fitting.fits(claw)
    for path, value in (
        ("zone.1.hardness", {}), ("zone.1.mate", {}), ("load.torque", "wide"), ("zone", []),
        ("priorities", {"points": {"cost": 5}}), ("load.torque_over", [1]),
    ):  # fmt: skip
        drafts.put(claw, path, value)
        assert fitting.fits(claw), path
    for path, value in (
        ("zone", "all"), ("part", "x"), ("part.section", [1]), ("workshop.heat", "fire"),
        ("load.torque_over", ["1"]), ("colour", "red"), ("part.name", ["x"]),
    ):  # fmt: skip
        damaged = drafts.whole(claw)
        drafts.put(damaged, path, value)
        assert not fitting.fits(damaged), path
    assert not fitting.fits([claw])


def test_any_requirement_fits():
    for number in range(60):
        assert fitting.fits(draft_number(number)), number
