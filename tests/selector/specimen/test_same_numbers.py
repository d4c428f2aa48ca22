"""A specimen is an option of `advise` without its part: the samples are the same numbers."""

import numpy as np
import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.job.process import temper_peak_c
from selector.option.zone_hardness import after_temper
from selector.requirement import argument, requirement_from
from selector.specimen.quenched import quenched
from selector.specimen.specimen import SHOP, specimen
from selector.specimen.tempered import skin_hrc, tempered
from tests.dog import only, varied

CATALOG = load_catalog()
CASES = [
    ("115crv3", "round 12 mm", "water"),
    ("100mncrw4", "flat 6 x 25 mm", "oil"),
    ("x153crmov12", "round 25 mm", "air"),
    ("42crmo4", "tube 30 x 12 mm", "oil"),
    ("c45", "hexagon 17 mm", "water"),
    ("51crv4", "square 14 mm", "oil"),
]


def option(slug, section, bath):
    """Return the furnace's option of a plain bar in a shop with a furnace and one bath."""
    bar = section.model_dump(include={"shape", "size", "length", "width", "bore"})
    part = {
        "part.section": [{k: v for k, v in bar.items() if v is not None}],
        "part.feature": [],
        "zone": [
            {
                "section": [1],
                "wear": "sliding",
                "hardness": {"min": "45 HRC", "max": "62 HRC"},
            }
        ],
        "load.torque": "1 N m",
        "workshop.heat": [{"source": "muffle-furnace"}],
        "workshop.protect": ["foil"],
        "workshop.bath": [] if bath == "air" else [{"medium": bath}],
    }
    options = advise(requirement_from(varied(part)), only(slug)).options
    # Tool steel may be cooled in the cold besides: another route, and not what is compared.
    (found,) = (one for one in options if "/through-furnace-cold." not in one.id)
    return found


def made(slug, text, bath, heat_c=None):
    section = argument.section("--section", text)
    return specimen(CATALOG, CATALOG.steels[slug], section, CATALOG.media[bath], heat_c)


@pytest.mark.parametrize(("slug", "text", "bath"), CASES)
def test_a_quench_and_temper_give_the_samples_of_the_option(slug, text, bath):
    of = made(slug, text, bath)
    chosen = option(slug, of.section, bath)
    assert chosen.treatment.route.slug == "through-furnace"
    temper = chosen.choice.temper
    outcome = chosen.judged.prediction
    assert skin_hrc(of, of.fresh, temper) == pytest.approx(outcome.surface_hrc, abs=1e-9)
    peak_c = temper_peak_c(temper, SHOP, of.normals)
    whole = after_temper(of.bar, of.fresh, peak_c, temper, of.normals)
    assert whole.hrc[:, -1] == pytest.approx(outcome.core_hrc, abs=1e-9)


@pytest.mark.parametrize(("slug", "text", "bath"), CASES)
def test_the_row_of_a_temper_is_what_the_option_prints(slug, text, bath):
    of = made(slug, text, bath)
    chosen = option(slug, of.section, bath)
    temper, figure = chosen.choice.temper, chosen.judged.prediction.figures()["surface"]
    rows = tempered(of, temper.time_s * temper.cycles).rows
    (row,) = [row for row in rows if row.temperature_c == temper.temperature_c]
    assert row.time_s == temper.time_s * temper.cycles
    assert (row.hrc.p05, row.hrc.p50, row.hrc.p95) == tuple(
        round(value, 3) for value in (figure.p05, figure.value, figure.p95)
    )


def test_the_core_of_a_case_hardening_steel_is_that_of_its_case_route():
    section = argument.section("--section", "round 30 mm")
    chosen = option("16mncr5", section, "oil")
    assert chosen.treatment.route.process == "case"
    found = quenched(CATALOG, CATALOG.steels["16mncr5"], section, CATALOG.media["oil"])
    core = chosen.judged.prediction.core_hrc
    assert found.points[-1].hrc.p50 == pytest.approx(np.median(core), abs=0.02)
    of = made("16mncr5", "round 30 mm", "oil")
    assert of.fresh.hrc[:, -1] == pytest.approx(core, abs=1e-9)


def test_advice_as_data_shows_the_same_hardness():
    """Through the records of both, as a check from outside would compare them."""
    text, bath = "round 40 mm", "oil"
    of = made("42crmo4", text, bath)
    part = {
        "part.section": [{"shape": "round", "size": 40, "length": 400}],
        "part.feature": [],
        "zone": [{"section": [1], "wear": "sliding", "hardness": {"min": "45 HRC"}}],
        "load.torque": "1 N m",
        "workshop.heat": [{"source": "muffle-furnace"}],
        "workshop.protect": ["foil"],
        "workshop.bath": [{"medium": bath}],
    }
    advice = advise(requirement_from(varied(part)), only("42crmo4"))
    shown = advice_out(advice).options[0]
    rows = tempered(of, 60.0 * shown.temper.time_min * shown.temper.cycles).rows
    (row,) = [row for row in rows if row.temperature_c == shown.temper.temperature_c]
    surface = shown.hardness.surface
    assert (row.hrc.p05, row.hrc.p50, row.hrc.p95) == (surface.p05, surface.p50, surface.p95)
    assert row.colour == shown.temper.colour


def test_the_heat_that_is_left_out_is_the_middle_of_the_range():
    """In oil of oil-hardening steel; water takes the lower half of that of rich steel."""
    for slug, bath, share in (("42crmo4", "oil", 0.5), ("115crv3", "water", 0.25)):
        span = CATALOG.steels[slug].hardened.temperature_c
        left_out = made(slug, "round 20 mm", bath)
        given = made(slug, "round 20 mm", bath, span.low + share * (span.high - span.low))
        assert given.fresh.hrc == pytest.approx(left_out.fresh.hrc, abs=1e-9)
