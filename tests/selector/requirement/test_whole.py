from typing import get_args

import pytest
from pydantic import ValidationError

from selector.requirement.whole import CRITICAL_USES, Requirement, SafetyUse
from tests.dog import GONE, asked, varied


@pytest.mark.parametrize("key", ["safety_use", "part", "zone", "load", "workshop"])
def test_what_has_no_default_must_be_said(key):
    with pytest.raises(ValidationError, match=key):
        Requirement.model_validate(varied({key: GONE}))


@pytest.mark.parametrize("use", get_args(SafetyUse))
def test_what_endangers_life(use):
    assert asked({"safety_use": use}).safety_critical is (use in CRITICAL_USES)
    assert (use in CRITICAL_USES) is (use not in {"none", "could hurt"})


def test_a_zone_must_lie_on_the_part():
    with pytest.raises(ValidationError, match="at most 2, the last section of the part"):
        Requirement.model_validate(varied({"zone.1.section": [2, 5]}))


def test_sections_of_a_zone():
    whole = asked({"zone.1.section": [2, 1]})
    assert whole.sections_of(whole.zone[1]) == (whole.part.section[1], whole.part.section[0])


def test_equal_requirements_are_equal_and_serve_as_keys():
    assert asked() == asked()
    assert hash(asked()) == hash(asked())
    assert asked() != asked({"part.name": "other"})


def test_plain_data_comes_back():
    whole = asked({"limit.days": 5, "priorities": {"preset": "wear"}})
    data = whole.model_dump(mode="json", exclude_none=True)
    # Hardness and torque are held in our units; a bare torque would be asked back.
    data["load"]["torque"] = f"{data['load']['torque']!r} N m"
    for zone in data["zone"]:
        for end in ("min", "max"):
            if zone.get("hardness"):
                zone["hardness"][end] = f"{zone['hardness'][end]!r} HV"
    assert Requirement.model_validate(data) == whole
