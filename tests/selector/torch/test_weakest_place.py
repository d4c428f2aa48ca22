import numpy as np
import pytest

from selector.requirement.part import Part, Section
from selector.torch.weakest_place import torque_borne_nm, weakest_form

ALONG = np.arange(1.0, 101.0, 2.0)
SOFT = np.full(ALONG.size, 20.0)
ROUND = {"shape": "round", "size": 20, "length": 100}


def part(*features, sections=(ROUND,)):
    return Part.model_validate({"name": "pin", "section": sections, "feature": features})


def hole(at, size=8):
    return {"kind": "cross-hole", "at": at, "size": size}


def test_a_bored_round_bears_as_a_tube():
    """1 - (19/20)³ of the solid bar, fully plastic."""
    solid, thin = (Section.model_validate({**ROUND, **b}) for b in ({}, {"bore": 19}))
    ratio = float(torque_borne_nm(thin, 20.0) / torque_borne_nm(solid, 20.0))
    assert ratio == pytest.approx(1 - 0.95**3)


def test_a_plain_bar_has_no_weak_form():
    assert weakest_form(part(), ALONG, SOFT, 20.0) is None


def test_the_widest_hole_is_the_weakest_and_is_named():
    found = weakest_form(part(hole(30, 4), hole(60, 12)), ALONG, SOFT, 20.0)
    assert found.name == "the cross hole at 60 mm"
    assert found.torque_nm < 0.3 * torque_borne_nm(part().section[0], 20.0)


def test_a_hole_bears_by_the_hardness_where_it_is():
    hrc = np.where(ALONG < 50.0, 40.0, 20.0)
    soft, hard = (weakest_form(part(hole(at)), ALONG, hrc, 20.0).torque_nm for at in (80, 20))
    assert hard > 1.2 * soft
    turned = weakest_form(part(hole(80)), ALONG, hrc, 20.0, turned_round=True)
    assert turned.torque_nm == pytest.approx(hard)
    # Counted as the map is.
    assert turned.name == "the cross hole at 20 mm"
    unsaid = weakest_form(part({"kind": "cross-hole", "size": 8}), ALONG, hrc, 20.0)
    assert unsaid.torque_nm == pytest.approx(soft)
    assert unsaid.name == "the cross hole"


def test_beyond_the_map_the_bar_is_as_bought():
    long = part(hole(250), sections=({**ROUND, "length": 300},))
    cold, sold = (weakest_form(long, ALONG, SOFT, hrc).torque_nm for hrc in (10.0, 40.0))
    assert cold < sold


def test_a_thin_section_beyond_the_map_is_seen():
    sections = ({**ROUND, "length": 150}, {**ROUND, "size": 8, "name": "tail"})
    found = weakest_form(part(sections=sections), ALONG, SOFT, 20.0)
    assert found.name == "tail"
    turned = part(sections=sections[::-1])
    assert weakest_form(turned, ALONG, SOFT, 20.0, turned_round=True).name == "tail"
