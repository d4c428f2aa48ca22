import pytest

from catalog import load_catalog
from selector.job.soak import soak_min, soak_source

STEELS = load_catalog().steels


@pytest.mark.parametrize(
    ("steel", "thick_mm", "minutes"),
    [
        # O1, 30 min an inch, a US sheet allows 20; D2 20 to 45; M2 2 to 5; C45 gives none.
        ("100mncrw4", 3.0, 20.0),
        ("100mncrw4", 60.0, 30.0),
        ("x153crmov12", 12.0, 20.0),
        ("x153crmov12", 50.0, 45.0),
        ("hs6-5-2", 10.0, 2.0),
        ("c45", 5.0, 10.0),
        ("c45", 25.0, 25.0),
        ("c45", 200.0, 60.0),
    ],
)
def test_a_soak_goes_by_steel_and_thickness(steel, thick_mm, minutes):
    assert soak_min(STEELS[steel], thick_mm) == minutes


def test_it_says_where_it_comes_from():
    assert soak_source(STEELS["hs6-5-2"]) == STEELS["hs6-5-2"].hardened.soak_min.source
    assert "from memory" in soak_source(STEELS["c45"])
