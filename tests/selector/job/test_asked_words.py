import pytest

from selector.job.asked_words import asked_words, most_words
from selector.job.demand import demands
from tests.dog import GONE, asked


def zone(hardness, **rest):
    """Return what the first zone asks with a hardness and a duty."""
    keys = {f"zone.0.{key}": value for key, value in rest.items()}
    return demands(asked({"zone.0.hardness": hardness, **keys}))[0]


@pytest.mark.parametrize(
    ("window", "least", "most"),
    [
        (
            {"min": "50 HRC", "max": "56 HRC"},
            "50 HRC (48 with slack)",
            "56 HRC (59 with slack)",
        ),
        ({"min": "50 HRC", "max": "56 HRC", "must": True}, "50 HRC", "56 HRC"),
        ({"min": "50 HRC"}, "50 HRC (48 with slack)", None),
        ({"max": "56 HRC"}, "no hardness", "56 HRC (59 with slack)"),
    ],
)
def test_a_window_is_told_as_written_and_with_what_still_passes(window, least, most):
    assert (asked_words(zone(window)), most_words(zone(window))) == (least, most)


def test_a_derived_window_has_a_floor_at_least():
    derived = zone(GONE, wear="sliding", severity="medium")
    assert asked_words(derived) == "51 HRC (45 at least)"
