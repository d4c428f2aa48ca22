"""Quenching media: severity grows with motion, and water is more severe than oil than air."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.medium import Medium

MEDIA = load_catalog().media
GENTLEST_FIRST = ("none", "mild", "moderate", "strong", "violent")


@pytest.mark.parametrize("slug", MEDIA)
def test_severity_never_falls_with_motion(slug):
    known = MEDIA[slug].severity_per_in
    middles = [known[motion].middle for motion in GENTLEST_FIRST if motion in known]
    assert middles == sorted(middles)


def test_still_baths_are_ordered_by_severity():
    still = [
        MEDIA[slug].severity_per_in["none"].middle for slug in ("brine", "water", "oil", "air")
    ]
    assert still == sorted(still, reverse=True)


@pytest.mark.parametrize("slug", MEDIA)
def test_what_burns_has_a_flash_point_above_its_bath(slug):
    medium = MEDIA[slug]
    assert (medium.flash_point_c is not None) == ("oil" in medium.kind)
    if medium.flash_point_c is not None:
        assert medium.temperature_c.high + 28 < medium.flash_point_c.value
        assert "oil-fire" in medium.cautions


@pytest.mark.parametrize(("key", "wrong"), [("kind", "mercury"), ("severity_class", "lava")])
def test_a_word_outside_the_list_is_refused(key, wrong):
    with pytest.raises(ValidationError, match=rf"{key}\n.*input_value='{wrong}'"):
        Medium.model_validate({**MEDIA["oil"].model_dump(), key: wrong})


def test_an_unknown_motion_is_refused():
    severity = {"gentle": MEDIA["oil"].severity_per_in["none"].model_dump()}
    with pytest.raises(ValidationError, match=r"severity_per_in\.gentle\.\[key\]\n"):
        Medium.model_validate({**MEDIA["oil"].model_dump(), "severity_per_in": severity})
