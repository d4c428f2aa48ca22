from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.layer import case_of, core_wt_pct, layer_run
from selector.option.layered import case_softening_hrc, cased, nitrided
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import asked, work

CATALOG = load_catalog()
LOW = Temper("oven", 175.0, 3600.0)
WEARS = {"zone.0.hardness": {"min": "58 HRC", "max": "62 HRC"}, "part.feature": []}


def near(depth=None, **changes):
    asks = {} if depth is None else {"zone.0.depth": depth}
    return resolved(asked({**WEARS, **asks, **changes}), CATALOG)


def pack(steel="16mncr5", bath="oil"):
    return work(steel, "pack-carburise", bath, "kiln")


def sent(route="subcontract-carburise", steel="16mncr5"):
    return work(steel, route, "oil" if "carburise" in route else None, None)


def test_a_pack_of_no_stated_depth_is_held_for_the_least_usual_one():
    own = layer_run(near(0.25), pack())
    usual = layer_run(near(), pack())
    # The depth is found again from the hours, to the last digit but one.
    least_mm = CATALOG.routes["pack-carburise"].depth_mm.low
    assert round(usual.depth_mm, 9) >= least_mm > own.asked_mm
    assert usual.hours > own.hours


@pytest.mark.parametrize(
    "treatment",
    [pack(), pack("s235", "water"), sent(), sent("subcontract-nitride", "31crmo12")],
    ids=lambda treatment: treatment.label,
)
def test_the_depth_asked_for_sets_the_hours(treatment):
    shallow, deep = (layer_run(near(mm), treatment) for mm in (0.25, 0.35))
    assert deep.hours > shallow.hours
    for run in (shallow, deep):
        assert run.depth_mm > run.asked_mm
        assert not run.falls_short


@pytest.mark.parametrize(("treatment", "share"), [(pack(), 0.95), (sent(), 0.98)])
def test_nearly_all_come_out_deep_enough(treatment, share):
    found = cased(prepare(treatment, near(0.8)), LOW)
    assert np.mean(found.depth_mm >= 0.8) == pytest.approx(share, abs=0.03)


def test_what_is_ground_off_is_grown_first():
    plain, ground = (
        layer_run(near(0.5, **{"part.stock_removal": mm}), pack()) for mm in (0, 0.2)
    )
    assert ground.hours > plain.hours
    assert ground.depth_mm == pytest.approx(plain.depth_mm, rel=0.15)


def test_a_route_goes_no_longer_than_its_hours_and_says_so():
    run, slow = (layer_run(near(4.0), one) for one in (pack(), pack("c15", "water")))
    assert slow.hours == CATALOG.routes["pack-carburise"].time_h.high
    assert run.depth_mm == pytest.approx(CATALOG.routes["pack-carburise"].depth_mm.high)
    assert run.falls_short
    assert slow.falls_short


def test_dips_give_a_thin_case_in_minutes():
    dips, buried = (
        layer_run(near(0.3), work("s235", "case-compound", "water", source))
        for source in ("oxy-propane", "charcoal-forge")
    )
    assert "min at" in dips.words
    assert 0.03 < dips.depth_mm < 0.15 < buried.depth_mm < 0.4


@pytest.mark.parametrize("route", ["subcontract-nitride", "subcontract-nitrocarburise"])
def test_what_is_left_to_grind_is_gone_before_a_part_is_nitrided(route):
    ground = {"part.stock_removal": "0.15 mm", "part.finish_after": ["surface-grinder"]}
    whole, left = (
        predict(prepare(sent(route, "31crmo12"), resolved(asked(given), CATALOG)), LOW)
        for given in ({}, ground)
    )
    assert left.layer.hours == whole.layer.hours
    assert left.layer.removed_mm == 0.0
    np.testing.assert_array_equal(left.depth_mm, whole.depth_mm)
    assert left.movement.permitted_mm == whole.movement.permitted_mm


def test_more_hours_cost_more():
    for treatment in (pack(), sent(), sent("subcontract-nitride", "31crmo12")):
        cheap, dear = (
            predict(prepare(treatment, near(mm)), LOW).bill.items["treatment"]
            for mm in (0.25, 0.5)
        )
        assert dear > cheap


def test_a_case_falls_from_its_surface_to_its_core():
    run = layer_run(near(0.8), pack())
    carbon = [point.carbon_wt_pct for point in run.profile]
    hrc = [point.hrc for point in run.profile]
    assert carbon == sorted(carbon, reverse=True)
    assert hrc == sorted(hrc, reverse=True)
    assert 0.8 < carbon[0] < 1.3
    assert carbon[-1] == pytest.approx(0.17, abs=0.03)
    # 550 HV is 52.3 HRC, at the depth told.
    depths = [point.depth_mm for point in run.profile]
    assert np.interp(-52.3, [-h for h in hrc], depths) == pytest.approx(run.depth_mm, abs=0.1)
    assert layer_run(near(0.3), sent("subcontract-nitride", "31crmo12")).profile == ()


def test_what_brings_no_layer_has_no_run():
    assert layer_run(near(), work("c45")) is None
    assert predict(prepare(work("c45"), near()), LOW).layer is None


def test_mild_steel_in_oil_gets_no_hard_case():
    found = cased(prepare(pack("c15"), near(0.5)), LOW)
    assert (found.depth_mm == 0).all()
    assert np.median(found.surface) < 45


def test_grinding_into_a_case_finds_less_carbon_and_less_hardness():
    deep = near(4.0)
    least = near(4.0, **{"part.stock_removal": 1.5})
    whole, ground = (cased(prepare(pack(), job), LOW) for job in (deep, least))
    assert np.median(ground.surface) < np.median(whole.surface) - 3
    assert (ground.surface >= ground.core).all()


def test_a_nitrided_layer_is_no_deeper_than_published():
    steel = CATALOG.steels["605m36"]
    treatment = replace(sent("subcontract-nitride"), steel=steel)
    assert layer_run(near(0.3), treatment).depth_mm <= steel.nitrided.depth_mm.high


def test_nitrocarburising_is_judged_by_its_compound_layer():
    found = nitrided(prepare(sent("subcontract-nitrocarburise", "42crmo4"), near(0.3)))
    assert 0.01 < np.median(found.depth_mm) < 0.03


def test_a_low_temper_takes_little_off_a_case():
    assert case_softening_hrc(Temper("oven", 150.0, 3600.0)) == 0
    assert case_softening_hrc(Temper("oven", 180.0, 3600.0)) == pytest.approx(1.05)


def test_a_case_is_harder_by_its_carbon_and_is_none_without_a_quench():
    job = near(0.8)
    curve, core = case_of(job, pack()), core_wt_pct(CATALOG.steels["16mncr5"])
    assert 0.1 < core < 0.25
    assert curve.at(np.array([0.8]))[0] > curve.at(np.array([core]))[0] + 10.0
    assert case_of(job, work("31crmo12", "subcontract-nitride", None, None)) is None
