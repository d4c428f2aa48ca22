import pytest

from catalog import load_catalog
from selector.requirement import argument
from selector.specimen.output import hardness_words, quench_words
from selector.specimen.quenched import quenched, through_words

CATALOG = load_catalog()


def made(slug, text="round 30 mm", bath="oil", heat_c=None):
    section = argument.section("--section", text)
    return quenched(CATALOG, CATALOG.steels[slug], section, CATALOG.media[bath], heat_c)


def test_hardness_falls_from_skin_to_centre():
    found = made("c45", bath="water")
    middles = [point.hrc.p50 for point in found.points]
    assert middles == sorted(middles, reverse=True)
    assert [point.from_surface_mm for point in found.points] == [0.3, 2.25, 5.25, 9.0, 15.0]
    assert found.headline.startswith("C45: 57 HRC at the skin")
    assert 0.0 < found.depth_mm.p50 < 15.0
    assert found.thickest_round_mm.p50 < 30.0


def test_heat_bath_and_section_are_named_as_they_are_taken():
    found = made("100mncrw4", "flat 1/4 x 1 in", heat_c=800.0)
    assert quench_words(found.quench) == "flat 6.35 x 25.4 mm, from 800 °C into oil at 50 °C"
    assert found.quench.heat.source == "as given"
    assert found.headline.startswith("O1 gauge plate (100MnCrW4): 64 HRC at the skin, ")
    assert "in the middle; hard through over 99 times in 100." in found.headline
    left_out = made("100mncrw4").quench.heat
    assert left_out.source == "middle of its range (uk-gauge-plate)"
    plates = made("x153crmov12", "flat 4 x 30 mm", "plates").quench.bath
    assert (plates.temperature_c, plates.agitation) == (None, None)


@pytest.mark.parametrize(
    ("slug", "bath", "said"),
    [
        ("100mncrw4", "water", "sold as one for oil: water is harsher, and may crack it."),
        ("c45", "oil", "sold as one for water: oil is milder."),
        ("x153crmov12", "fast-oil", "sold as one for air: fast oil is harsher"),
        ("x153crmov12", "air", None),
    ],
)
def test_another_bath_than_the_steel_is_sold_for_is_said(slug, bath, said):
    sold = [text for text in made(slug, bath=bath).assumed if "sold as one" in text]
    assert sold == [] if said is None else said in sold[0]


def test_a_bath_too_mild_is_an_answer():
    found = made("c45")
    assert "so it does not harden, to the 45 HRC of half martensite" in found.headline
    assert found.depth_mm.p50 == 0.0
    thin = through_words(found)[1]
    assert thin.startswith("a round hardens through up to ")


def test_what_never_softens_inside_hardens_over_all_that_is_tried():
    said = through_words(made("x30cr13", bath="air"))[1]
    assert "over 400 mm" in said


def test_a_heat_outside_the_range_of_the_steel_is_said_and_may_harden_nothing():
    cold = made("x153crmov12", bath="air", heat_c=820.0)
    assert "This steel is hardened from 1010 to 1030 °C (tool-steel-handbooks)." in cold.assumed
    assert through_words(cold)[1] == "no round hardens through, however thin"
    seldom = made("x153crmov12", bath="air", heat_c=890.0)
    assert seldom.points[0].hrc.p05 < seldom.half_martensite_hrc < seldom.points[0].hrc.p95
    assert "none to " in through_words(seldom)[1]


def test_a_case_hardening_steel_shows_its_core():
    found = made("16mncr5")
    assert found.steel.hardens == "core"
    assert found.headline.startswith("Core of 16MnCr5: ")
    assert found.quench.heat is None
    assert "with its case into oil" in quench_words(found.quench)
    assert found.points[0].hrc.p50 < 45.0
    # The range of such a steel is its case's: the core is asked for from any heat.
    assert "hardened from" not in " ".join(made("16mncr5", heat_c=1000.0).assumed)


def test_a_steel_that_no_quench_hardens_has_no_points():
    found = made("s235")
    assert (found.points, found.origin, found.assumed) == ((), None, ())
    assert found.headline.startswith("mild steel (S235JR) is not hardened by a quench.")
    assert through_words(found) == []


def test_soft_places_are_shown_in_brinell():
    found = made("080m15", "round 60 mm")
    assert hardness_words(found.points[-1].hrc)[0].endswith("HB")
    empty = found.points[0].hrc.model_copy(update={"p50": None})
    assert hardness_words(empty) == ("unknown", "")
