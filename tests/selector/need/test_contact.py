import pytest

from selector.duty.contact import pressings
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.mechanics.contact import rolling_contact_limit_mpa
from selector.need.contact import contact_need
from tests.dog import GONE, asked


def of(changes):
    return [contact_need(pressing) for pressing in pressings(asked(changes))]


def test_a_contact_asks_for_surface_and_depth():
    rolled = {
        "zone.0.wear": "rolling-contact",
        "zone.0.hardness": GONE,
        "load.contact": "15 kN",
        "load.cycles": "fatigue",
    }
    (contact,) = of(rolled)
    assert contact.pressure.p50 == pytest.approx(1199, abs=2)
    # Flame-hardened, ISO 6336-5: 0.541 HV + 882 MPa.
    asked_hv = (contact.pressure.p50 - 882) / 0.541
    assert contact.surface.p50 == pytest.approx(float(hrc_from_hv(asked_hv)), abs=0.3)
    # Pressure follows the root of a load on a line, and what bears it follows the pressure.
    for end in ("p05", "p50", "p95"):
        borne = rolling_contact_limit_mpa(
            hv_from_hrc(getattr(contact.surface, end), outside="extend")
        )
        assert borne == pytest.approx(getattr(contact.pressure, end), rel=0.003)
    soft, hard = (
        contact.depth_over_core[core].p50 for core in ("soft bar", "pre-hardened bar")
    )
    assert soft > hard > contact.shear_depth.p50
    assert "hard layer" in contact.text
    (too_much,) = of({**rolled, "load.contact": "60 kN"})
    assert too_much.surface is None
    assert "no hardness bears it" in too_much.text
