"""Leaded bar and food."""

import pytest

from selector.job.lead import lead_at_food, touches_food
from tests.dog import asked, work

LEADED = work("11smnpb30", "as-bought", None, None, condition="cold-drawn")


@pytest.mark.parametrize(
    ("name", "touched"),
    [
        ("Hinge pin for a waffle iron", True),
        ("Scraper for bread dough", True),
        ("Drum shaft for a coffee roaster", True),
        ("Clapper pin for a handbell", False),
        ("Steady for a teapot lathe", False),
    ],
)
def test_leaded_bar_is_kept_from_food(name, touched):
    wanted = asked({"part.name": name})
    assert touches_food(wanted) is touched
    assert (lead_at_food(wanted, LEADED) is not None) is touched


def test_what_food_rubs_on_is_read_off_the_mate():
    mate = {"material": "bread and meat", "should_wear": "either"}
    wanted = asked({"part.name": "Bar", "zone.0.mate": mate})
    assert lead_at_food(wanted, LEADED).text == "leaded: lead has no place where food is"


def test_bar_without_lead_may_touch_food():
    wanted = asked({"part.name": "Hinge pin for a waffle iron"})
    assert lead_at_food(wanted, work("c45", "local-torch")) is None
