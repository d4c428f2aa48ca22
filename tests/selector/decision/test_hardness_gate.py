from types import SimpleNamespace

import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.hardness_gate import (
    ceiling_hrc,
    floor_hrc,
    hardness_gates,
    off_window_hrc,
)
from selector.job.job import resolved
from selector.option.skin import Skin
from tests.dog import asked, work

CATALOG = load_catalog()


def zone(hrc, depth_mm=5.0, skin=None):
    """Return a working zone of which half the samples lie 2 HRC to either side."""
    surface = hrc + np.tile((-2.0, 2.0), 50)
    return SimpleNamespace(
        treatment=work("42crmo4"),
        surface_hrc=surface,
        depth_mm=np.full(surface.shape, depth_mm),
        layer=None,
        skin=skin,
    )


def verdicts(found, changes=None):
    gates = hardness_gates(found, resolved(asked(changes), CATALOG).leading)
    return {gate.name: (gate.verdict, gate.share) for gate in gates}


@pytest.mark.parametrize(
    ("hrc", "enough", "too_hard"),
    [(53.0, 1.0, 1.0), (42.0, 0.0, 1.0), (64.0, 1.0, 0.0)],
)
def test_a_zone_is_held_to_both_ends_of_what_is_demanded(hrc, enough, too_hard):
    found = verdicts(zone(hrc))
    assert found["hard_enough"][1] == enough
    assert found["not_too_hard"][1] == too_hard


@pytest.mark.parametrize(("deep_mm", "verdict"), [(1.0, "fail"), (3.0, "pass")])
def test_a_depth_is_judged_where_one_is_asked_for(deep_mm, verdict):
    assert verdicts(zone(53.0, deep_mm), {"zone.0.depth": "2 mm"})["depth"][0] == verdict


def test_hardness_lost_to_a_bare_heat_is_said_where_it_is_felt():
    lead = resolved(asked(), CATALOG).leading
    lost, little = (Skin(0.2, 0.0, 0.2, loss, loss) for loss in (4.0, 0.5))
    assert (
        "4 HRC of it lost to the bare heat"
        in hardness_gates(zone(53.0, skin=lost), lead)[0].text
    )
    assert "lost" not in hardness_gates(zone(53.0, skin=little), lead)[0].text
    wrapped = Skin(0.2, 0.0, 0.2, 4.0, 4.0, is_bare=False)
    said = hardness_gates(zone(53.0, skin=wrapped), lead)[0].text
    assert "lost to the heat: leave 0.2 mm" in said


def test_what_a_nitrided_skin_must_not_pass_is_no_derived_ceiling():
    lead = resolved(asked({"zone.0.hardness": None}), CATALOG).leading
    nitrided = work("42crmo4", "subcontract-nitride", medium=None, source=None)
    assert lead.derived
    assert ceiling_hrc(nitrided, lead) is None
    assert ceiling_hrc(work("42crmo4"), lead) == lead.ceiling_hrc


def test_spring_wire_is_right_as_soft_as_it_is_drawn_unless_a_hardness_is_asked():
    wire = work("music-wire", "prehard-bar", None, None)
    spring = {"zone.0.hardness": None, "zone.0.wear": "none", "part.name": "return spring"}
    derived = resolved(asked(spring), CATALOG).leading
    stated = resolved(asked({**spring, "zone.0.hardness": {"min": "50 HRC"}}), CATALOG).leading
    assert derived.floor_hrc is not None
    assert floor_hrc(wire, derived) is None
    assert float(off_window_hrc(wire, np.array([46.0]), derived)[0]) == 0.0
    assert floor_hrc(wire, stated) == stated.floor_hrc is not None
    assert floor_hrc(work("c45"), derived) == derived.floor_hrc


def test_a_soft_thing_sold_by_the_same_name_does_not_pass_where_hardness_is_asked():
    stake = {"part.name": "Stake", "zone.0.hardness": None, "load.impact": "hammered"}
    rebar = work("reinforcing-bar", "as-bought", None, None)
    worn = {**stake, "zone.0.wear": "sliding", "zone.0.severity": "medium"}
    lead = resolved(asked(worn), CATALOG).leading
    assert floor_hrc(rebar, lead) == lead.floor_hrc
    assert off_window_hrc(rebar, np.array([14.0]), lead) > 20.0
    pegged = resolved(asked({**stake, "zone.0.wear": "none"}), CATALOG).leading
    assert floor_hrc(rebar, pegged) is None


def test_a_thing_sold_hard_for_such_a_part_is_as_its_makers_want_it():
    pin = {"part.name": "Gudgeon pin", "zone.0.hardness": None, "zone.0.wear": "sliding"}
    lead = resolved(asked({**pin, "zone.0.severity": "heavy"}), CATALOG).leading
    assert floor_hrc(work("gudgeon", "buy-hard-element", None, None), lead) is None
