import json

import pytest

from catalog import load_catalog
from selector.flame.output import STEPS, flame_out
from selector.heat.colour import HEAT_COLOURS, TEMPER_COLOURS, heat_colour
from tests.once import flamed

CATALOG = load_catalog()


def out(changes=None, steel="C45"):
    return flame_out(flamed(changes, steel), CATALOG)


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
    assert {"at_mm", "width_mm", "hrc", "torque_nm"} <= set(figures["soft_ring"])
    assert figures["temper"]["temperature_c"] >= 175.0


def test_what_the_page_prints_is_in_the_record(found):
    figures, asked_of = found["families"][0]["figures"], found["asked"]
    assert asked_of["text"] == "50 HRC (48 with slack)"
    assert (asked_of["low_hrc"], asked_of["floor_hrc"]) == (50.0, 48.0)
    assert figures["hard_through"] == (figures["depth_mm"] >= figures["through_mm"])
    assert figures["temper"]["colour"] in TEMPER_COLOURS
    assert figures["cracking"]["text"].startswith(figures["cracking"]["class"])
    assert figures["margin"] == min(
        2.0, *(c["margin"] for c in figures["checks"] if c["margin"] is not None)
    )
    assert not figures["from_the_other_end"]
    assert any("firebricks" in text for text in found["assumptions"])


def test_cooling_is_told_as_the_trade_tells_it(found):
    """By Jominy distance and the rate at 704 °C that it stands for (ASTM A255)."""
    surface, core = found["families"][0]["figures"]["cooling"]
    assert (surface["at"], core["at"]) == ("surface", "core")
    assert surface["jominy_mm"] < core["jominy_mm"]
    assert surface["rate_704_c_k_per_s"] > core["rate_704_c_k_per_s"] > 0.0


def test_a_heat_is_told_by_its_colour_in_the_light_of_the_workshop():
    """Cherry, by the printed tables from 700 to 902 °C; in the sun it looks 50 °C duller."""
    seen = {
        light: out({"workshop.light": light})["families"][0]["figures"]["seen"]
        for light in ("shade", "sun")
    }
    assert seen["shade"]["colour"] == "cherry"
    assert seen["shade"]["tables_c"] == [700.0, 901.7]
    assert seen["shade"]["error_c"] == pytest.approx(26.1, abs=0.1)
    assert seen["sun"]["looks_duller_by_c"] == 50.0
    duller = heat_colour(seen["sun"]["tables_c"][0])
    assert duller.temperature_c < HEAT_COLOURS[seen["shade"]["colour"]].temperature_c


def test_a_zone_at_the_far_end_counts_from_there():
    ends = {"zone.0.section": [2], "zone.1.section": [1], "part.section.1.length": 40}
    assert out(ends)["families"][0]["figures"]["from_the_other_end"]


def test_where_nothing_is_to_be_hardened_there_is_neither_figure_nor_caution():
    """No zone asks for hardness: no steel is heated, and nothing is warned of."""
    soft = out({"zone": [{"section": [1], "wear": "none"}]}, steel=None)
    assert soft["verdict"] == "not_needed"
    assert (soft["families"], soft["map"], soft["cautions"]) == ([], None, [])


def test_a_no_without_a_way_out_has_no_cautions_of_a_hardening():
    assert out(steel="S235JR")["cautions"] == []


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
