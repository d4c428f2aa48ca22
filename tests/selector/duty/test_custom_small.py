"""Custom where a part is small: dogs filed out of ground stock, and teeth left soft."""

from catalog import load_catalog
from selector.duty.custom import custom
from selector.duty.merit import ALSO, USUAL
from selector.job.job import resolved
from tests.dog import GONE, asked, work

CATALOG = load_catalog()


def merit(changes, *made):
    wanted = asked(changes)
    return custom(work(*made), resolved(wanted, CATALOG).leading, wanted)


def pawl(thick):
    flat = {"shape": "flat", "size": thick, "width": 2 * thick, "length": 20}
    return {
        "part.name": "Pawl", "part.feature": [], "part.section": [flat], "load.torque": GONE,
        "zone": [{"section": [1], "wear": "edge-impact", "severity": "medium"}],
    }  # fmt: skip


def test_a_small_pawl_is_filed_out_of_ground_stock_and_a_large_one_is_not():
    small, large = pawl(4), pawl(16)
    assert merit(small, "100mncrw4", "through-torch") == USUAL
    assert merit(large, "100mncrw4", "through-torch") == ALSO
    assert merit(small, "c45", "through-torch") == ALSO
    assert merit(large, "c45", "through-torch") == USUAL


def test_teeth_left_soft_are_rather_of_medium_carbon_bar():
    wheel = {
        "part.feature": [{"kind": "teeth", "at": 5}], "zone.0.hardness": GONE,
        "zone.0.severity": "light",
    }  # fmt: skip
    soft, better = (merit(wheel, slug, "as-bought") for slug in ("s235", "c45"))
    assert 0.0 < soft < better
    plain = {**wheel, "part.feature": [], "zone.0.wear": "none", "load.torque": GONE}
    assert merit(plain, "s235", "as-bought") == merit(plain, "c45", "as-bought")


def test_sulphides_crack_under_blows_again_and_again():
    key = {
        "part.feature": [], "zone.0.hardness": GONE, "zone.0.wear": "none", "load.torque": GONE,
        "load.cycles": "fatigue",
    }  # fmt: skip
    knocked, still = ({**key, "load.impact": impact} for impact in ("light", "none"))
    assert merit(knocked, "11smn30", "as-bought") < merit(still, "11smn30", "as-bought")
    assert merit(knocked, "c45", "as-bought") == merit(still, "c45", "as-bought")
