import itertools

import pytest

from catalog import load_catalog
from selector.job.tempers import CASE_CEILING_C, temper_ceilings, temper_times, tempers
from selector.job.treatment import NO_TEMPER, Temper, is_torched, knows
from tests.dog import asked, work

CATALOG = load_catalog()
SOURCES = CATALOG.heat_sources


def ceilings(*slugs, **shop):
    workshop = asked({f"workshop.{key}": value for key, value in shop.items()}).workshop
    return temper_ceilings(workshop, tuple(SOURCES[slug] for slug in slugs))


def test_label_tells_tempers_apart():
    made = [
        Temper(means, heat, time, cycles)
        for means, heat, time, cycles in itertools.product(
            ("oven", "torch"), (200.0, 225.0), (300.0, 3600.0), (1, 2)
        )
    ]
    assert len({temper.label for temper in made}) == len(made)
    assert Temper("oven", 200.0, 3600.0).label == "oven-200c-60min"
    assert NO_TEMPER.label == "none"


def test_label_of_a_treatment_names_steel_condition_route_and_bath():
    assert work().label == "c45/hot-rolled/through-torch.oil"
    assert work(route="as-bought", medium=None).label == "c45/hot-rolled/as-bought"


def test_what_hardens_and_what_is_judged_by_eye():
    assert work().hardens
    assert work().by_eye
    assert not work(source="muffle-furnace").by_eye
    assert not work(route="as-bought").hardens
    assert not work(route="case-compound").hardens


def test_an_oven_tempers_and_a_flame_tempers_to_colours():
    assert set(ceilings("muffle-furnace")) == {"furnace"}
    answer = ceilings("oxy-propane", "kitchen-oven")
    assert {"oven", "torch", "residual"} <= set(answer)
    assert answer["torch"] < 400


@pytest.mark.parametrize(
    ("guide", "beyond"), [("crayon", True), ("infrared", True), ("thermocouple", False)]
)
def test_what_reads_the_part_leads_a_flame_beyond_the_colours(guide, beyond):
    by_colour = ceilings("oxy-propane")["torch"]
    assert (ceilings("oxy-propane", measure=["eye", guide])["torch"] > by_colour) is beyond


def test_a_stated_ceiling_stands():
    answer = ceilings("kitchen-oven", temper=[{"means": "oven", "ceiling": "220 degC"}])
    assert answer["oven"] == pytest.approx(220)


def test_an_oven_of_480_fahrenheit_reaches_250_celsius():
    hottest = tempers(work(), {"oven": (480.0 - 32.0) / 1.8})[-1]
    assert hottest.temperature_c == 250.0


@pytest.mark.parametrize("top", [140.0, 150.0, 230.0, 700.0])
def test_tempers_rise_and_keep_below_the_ceiling(top):
    grid = tempers(work(), {"oven": top})
    heats = [temper.temperature_c for temper in grid if temper is not NO_TEMPER]
    assert heats == sorted(set(heats))
    assert all(heat <= top for heat in heats)
    assert bool(heats) == (top >= 150)


def test_no_means_no_temper():
    assert tempers(work(), {}) == (NO_TEMPER,)
    assert tempers(work(route="residual-heat", medium="water"), {}) == ()


def test_what_can_be_tempered_is():
    assert NO_TEMPER not in tempers(work(), {"oven": 250.0})


@pytest.mark.parametrize(
    ("steel", "struck", "times"),
    [
        ("c45", True, 1),
        ("100mncrw4", False, 2),
        ("115crv3", False, 1),
        ("115crv3", True, 2),
        ("x153crmov12", False, 2),
        ("hs6-5-2", False, 3),
    ],
)
def test_rich_steel_is_tempered_twice_or_thrice(steel, struck, times):
    assert temper_times(CATALOG.steels[steel], struck=struck) == times
    cased = tempers(work(steel), {"oven": 250.0}, struck=struck)
    assert {temper.cycles for temper in cased} == {times}


def test_a_case_is_tempered_low_only():
    grid = tempers(work("s235", "case-compound"), {"furnace": 700.0})
    assert max(temper.temperature_c for temper in grid) <= CASE_CEILING_C


def test_residual_heat_needs_its_temper():
    grid = tempers(work(route="residual-heat", medium="water"), {"residual": 310.0})
    assert {temper.means for temper in grid} == {"residual"}


@pytest.mark.parametrize(
    "route", ["as-bought", "subcontract-nitride", "subcontract-chrome", "normalise", "anneal"]
)
def test_nothing_is_tempered_where_no_martensite_is_made(route):
    assert tempers(work(route=route), {"oven": 250.0, "furnace": 700.0}) == (NO_TEMPER,)


def test_a_firm_has_its_own_furnace():
    grid = tempers(work(route="subcontract-vacuum", source=None), {})
    assert max(temper.temperature_c for temper in grid) > 600


def test_ageing_follows_its_published_points():
    steel = work("x3nicomoti18-9-5", "age-harden", None)
    points = steel.steel.aged.curve_hrc.points
    assert [t.temperature_c for t in tempers(steel, {})] == [heat for heat, _ in points]


def test_only_a_thin_part_out_of_oil_is_blazed_off():
    has = {"blaze": 390.0}
    assert "blaze" in {t.means for t in tempers(work(), has, thin=True)}
    assert "blaze" not in {t.means for t in tempers(work(), has)}
    assert "blaze" not in {t.means for t in tempers(work(medium="water"), has, thin=True)}


@pytest.mark.parametrize(
    ("slug", "known"),
    [("oxy-propane", True), ("forge", True), ("kitchen-oven", False), ("induction", False)],
)
def test_flames_and_fires_are_known(slug, known):
    assert knows(SOURCES[slug]) is known
    assert not knows(None)


@pytest.mark.parametrize(
    ("treatment", "followed"),
    [
        (work("c45", "local-torch", "oil"), True),
        (work("c45", "local-torch", "oil", "forge"), True),
        (work("c45", "through-torch"), True),
        (work("c45", "through-torch", "plates"), False),
        (work("c45", "through-furnace", "oil", "muffle-furnace"), False),
        (work("c45", "subcontract-induction", "water", None), False),
        (work("c45", "as-bought", None, None), False),
    ],
    ids=["torch", "forge", "whole", "bath not described", "furnace", "induction", "bought"],
)
def test_every_flame_and_fire_is_followed(treatment, followed):
    assert is_torched(treatment) is followed


@pytest.mark.parametrize(("steel", "ms_c"), [("42crmo4", 335.0), ("51crv4", 290.0)])
def test_salt_for_bainite_is_kept_above_the_martensite_start(steel, ms_c):
    grid = tempers(work(steel, "austemper", "hot-salt", "kiln"), {})
    assert {temper.means for temper in grid} == {"salt"}
    assert min(temper.temperature_c for temper in grid) > ms_c
    assert max(temper.temperature_c for temper in grid) <= 400.0


@pytest.mark.parametrize(
    ("steel", "bath", "part"),
    [
        ("115crv3", "water", "lower"), ("115crv3", "oil", "upper"), ("c105u", "water", "lower"),
        ("100cr6", "water", "lower"), ("100cr6", "oil", "whole"), ("100mncrw4", "oil", "whole"),
        ("c45", "water", "whole"), ("42crmo4", "oil", "whole"),
    ],
)  # fmt: skip
def test_of_rich_steel_water_takes_the_lower_end_of_a_hardening_range(steel, bath, part):
    """EN 10083 and its forerunners: lower end for water, upper for oil; from memory.

    Silver steel: 770 to 780 °C in water, 800 to 810 °C for thin parts in oil; from memory.
    """
    made = work(steel, "through-furnace", bath)
    span = CATALOG.steels[steel].hardened.temperature_c
    ends = {
        "lower": (span.low, span.middle), "upper": (span.middle, span.high),
        "whole": (span.low, span.high),
    }  # fmt: skip
    assert made.heats_c == ends[part]
