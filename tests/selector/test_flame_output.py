import json

import pytest

from catalog import load_catalog
from selector.flame import flame_answer
from selector.flame_output import STEPS, flame_out
from tests.dog import asked

CATALOG = load_catalog()


def out(changes=None, steel="C45"):
    return flame_out(flame_answer(asked(changes), CATALOG, steel), CATALOG)


@pytest.fixture(scope="module")
def found():
    return out()


def test_it_is_plain_json_without_nan(found):
    assert json.loads(json.dumps(found, allow_nan=False)) == found


def test_the_figures_asked_for_are_there(found):
    figures = found["families"][0]["figures"]
    for key in (
        "surface_hrc", "depth_mm", "hard_to_mm", "heated_past_mm", "heat_s", "gas_l",
        "corner_margin_c", "bow_p90_mm", "core_hrc",
    ):  # fmt: skip
        assert isinstance(figures[key], float | int), key
    assert set(figures["soft_ring"]) == {"at_mm", "width_mm", "hrc", "torque_nm"}
    assert figures["temper"]["temperature_c"] >= 175.0


def test_the_map_runs_along_the_axis_and_across(found):
    drawn = found["map"]
    assert len(drawn["along_mm"]) == len(drawn["surface_hrc"]) == len(drawn["core_hrc"])
    assert drawn["along_mm"] == sorted(drawn["along_mm"])
    assert len(drawn["across"]["radius_mm"]) == len(drawn["across"]["hrc"])


def test_cautions_come_in_the_order_of_the_work(found):
    places = [STEPS.index(caution["step"]) for caution in found["cautions"]]
    assert places == sorted(places)


def test_the_water_line_is_warned_of(found):
    """Holding a chisel still at one water line."""
    assert "keep-moving-at-water-line" in {caution["id"] for caution in found["cautions"]}


def test_a_hot_part_half_in_oil_is_warned_of():
    """Half-dipping a large hot part in oil; in water the warning would be noise."""
    oil, water = (
        {caution["id"] for caution in out(steel=steel)["cautions"]}
        for steel in ("42CrMo4", "C45")
    )
    assert "oil-fire" in oil
    assert "oil-fire" not in water


def test_a_torch_too_small_has_a_ceiling_and_no_map():
    big = {f"part.section.{n}.size": 76 for n in (0, 1)}
    found = out({**big, "workshop.heat": [{"source": "hand-torch"}]})
    figures = found["families"][0]["figures"]
    assert (found["verdict"], found["map"], figures["reached"]) == ("no", None, False)
    assert figures["ceiling_c"] < 800.0
    assert "surface_hrc" not in figures


def test_a_change_carries_its_own_figures():
    still = {"workshop.turns_part": False, "workshop.held_by": "tongs"}
    change = out(still)["families"][0]["change"]
    assert change["at_hand"]
    assert change["figures"]["side_to_side_k"] < 60.0
