import pytest

from catalog import load_catalog
from selector.flame.assumption import flame_assumptions
from selector.job.job import resolved
from tests.dog import GONE, asked, work

CATALOG = load_catalog()
STATED = {
    "limit.runout": 0.1,
    "workshop.measure": ["eye"],
    "workshop.light": "sun",
    "workshop.heat": [{"source": "oxy-propane", "gas_flow": "1.2 kg/h"}],
    "workshop.bath": [
        {"medium": "water", "volume": 20, "temperature": 20, "agitation": "strong"}
    ],
}


def said(changes=None, source="oxy-propane", medium="water"):
    done = work("c45", "local-torch", medium, source)
    return "\n".join(flame_assumptions(done, resolved(asked(changes), CATALOG, count=1)))


@pytest.mark.parametrize(
    "words",
    [
        "No run-out given: 0.2 mm",
        "The heat is read by eye in shade, by a practised hand",
        "No gas flow given for the",
        "so large that it does not warm",
        "moderate motion",
        "as warm as usual, 20 °C",
    ],
)
def test_it_is_told_where_it_was_not_said_and_only_there(words):
    assert words in said()
    assert words not in said(STATED)


def test_the_hearth_is_told_of_a_flame_and_not_of_a_fire():
    assert "hearth of firebricks" in said()
    assert "hearth" not in said({"workshop.heat": [{"source": "forge"}]}, "forge")


def test_a_bright_place_is_told_to_make_the_heat_too_high():
    assert "50 °C too hot" in said(STATED)
    assert "too hot" not in said()


def test_what_is_given_and_not_used_is_named():
    given = {
        "workshop.machine": ["lathe"],
        "workshop.heat.0.tip": "no. 5",
        "load.bending": "9 N m",
    }
    unused = said(given).split("does not use it: ")[1]
    assert unused == "workshop.machine, workshop.heat.tip, load.bending."
    assert "does not use it" not in said()


def test_a_derived_window_and_a_flat_are_told():
    flat = {"part.section.0.shape": "flat", "part.section.0.size": 8,
            "part.section.0.width": 40, "zone.0.hardness": GONE}  # fmt: skip
    text = said(flat)
    assert "Zone 1: 54 HRC to 61 HRC and 0.1 mm deep, derived from medium sliding wear" in text
    assert "A flat of 8 × 40 mm stands as a round of 13.3 mm" in text
