from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.prediction import embrittled, predict
from selector.option.preparation import prepare
from tests.dog import asked, work

CATALOG = load_catalog()


def oven(temperature_c, means="oven"):
    return Temper(means, temperature_c, 3600.0)


def predicted(job, treatment=None, temper=None):
    return predict(prepare(treatment or work("c45"), job), temper or oven(200.0))


def test_every_figure_has_unit_relation_and_source(job):
    found = predicted(job).figures()
    assert set(found) == {"surface", "core", "shank", "depth_mm"}
    assert {name: item.unit for name, item in found.items()} == {
        "surface": "HRC", "core": "HRC", "shank": "HRC", "depth_mm": "mm",
    }  # fmt: skip
    for item in found.values():
        assert item.relation
        assert item.source
        assert item.inputs["steel"] == "C45"
        assert item.p05 <= item.value <= item.p95


def test_every_quantity_has_one_value_a_draw(job):
    found = predicted(job)
    for values in (
        found.surface_hrc, found.core_hrc, found.shank_hrc, found.depth_mm,
        found.snapped, found.snap_margin_hrc, found.crack.rate,
        found.movement.moved_mm, found.bill.cost,
    ):  # fmt: skip
        assert values.shape == (job.count,)
    assert found.section_hrc.shape == (job.count, 2)


@pytest.mark.parametrize("temper", [NO_TEMPER, oven(125.0), oven(149.0)], ids=str)
def test_toughness_is_unknown_as_quenched_or_tempered_below_150(job, temper):
    found = predicted(job, temper=temper)
    assert np.isnan(found.snap_margin_hrc).all()


@pytest.mark.parametrize("temper", [oven(150.0), oven(200.0), oven(250.0)], ids=str)
def test_toughness_is_known_from_150_up(job, temper):
    assert np.isfinite(predicted(job, temper=temper).snap_margin_hrc).all()


def test_a_hotter_temper_leaves_more_in_hand(job):
    steel = work("c60", medium="oil")
    cool, warm = (
        np.median(predicted(job, steel, oven(t)).snap_margin_hrc) for t in (200.0, 300.0)
    )
    assert warm > cool


def test_bar_as_bought_has_a_known_toughness(job):
    found = predicted(job, work("c45", "as-bought", None, None), NO_TEMPER)
    assert np.isfinite(found.snap_margin_hrc).all()


def test_a_bought_shaft_is_carried_by_its_soft_core(job):
    shaft, dowel = (
        predicted(job, work(slug, "buy-hard-element", None, None, condition="hard-element"),
                  NO_TEMPER)
        for slug in ("linear-shaft", "dowel-pin")
    )  # fmt: skip
    assert np.median(shaft.core_hrc) < np.median(shaft.surface_hrc) - 20
    assert np.median(shaft.snap_margin_hrc) > np.median(dowel.snap_margin_hrc) + 10


def test_a_case_is_carried_by_its_core(job):
    cased = predicted(job, work("16mncr5", "pack-carburise", "oil", None), oven(150.0))
    soaked = work("100mncrw4", "through-furnace", "oil", "muffle-furnace")
    through = predicted(job, soaked, oven(200.0))
    assert np.isfinite(cased.snap_margin_hrc).all()
    assert np.median(cased.snap_margin_hrc) > np.median(through.snap_margin_hrc)


def test_a_temper_in_the_window_leaves_less_in_hand(job):
    treatment = work("42crmo4")
    free = treatment.steel.model_copy(update={"embrittlement_c": ()})
    lost = {
        heat_c: np.median(
            predicted(job, replace(treatment, steel=free), oven(heat_c)).snap_margin_hrc
            - predicted(job, treatment, oven(heat_c)).snap_margin_hrc
        )
        for heat_c in (200.0, 300.0)
    }
    assert lost[200.0] == 0
    assert lost[300.0] > 1


@pytest.mark.parametrize(
    ("heat_c", "means", "inside"),
    [
        (225, "torch", False),
        (250, "torch", True),
        (300, "torch", True),
        (380, "torch", True),
        (400, "furnace", False),
        (250, "furnace", False),
    ],
)
def test_a_temper_reaches_the_window_as_far_as_it_may_be_missed(heat_c, means, inside):
    (span,) = CATALOG.steels["42crmo4"].embrittlement_c
    assert (span.low, span.high) == (260, 370)
    assert embrittled(work("42crmo4"), oven(float(heat_c), means)) is inside


@pytest.mark.parametrize("steel", ["c45", "c105u", "115crv3", "100mncrw4"])
def test_tool_steels_of_low_alloy_have_no_such_window(steel):
    assert not embrittled(work(steel), oven(300.0))


def test_what_is_not_tempered_is_not_embrittled():
    assert not embrittled(work("42crmo4"), NO_TEMPER)


def test_a_thin_oil_hardening_part_is_hard_through_and_shallow_steel_is_not(job):
    assert predicted(job, work("100mncrw4")).hard_through
    assert not predicted(job, work("115crv3")).hard_through


def test_where_the_model_is_left_the_figures_say_so(job):
    rich = predicted(job, work("31crmo12")).figures()
    assert any("Cr 3.05 wt %" in sentence for sentence in rich["surface"].validity)
    assert predicted(job).figures()["surface"].validity == ()


def test_a_case_at_an_edge_chips_as_tool_steel_and_elsewhere_its_core_carries_it():
    cased = work("16mncr5", "pack-carburise", "oil", "forge")
    plain, edged = (
        predicted(resolved(asked({"part.feature": feature}), CATALOG), cased)
        for feature in ([], [{"kind": "edge", "at": 1}])
    )
    assert np.median(edged.snap_margin_hrc) < np.median(plain.snap_margin_hrc) - 5


def test_what_goes_wrong_on_the_way_is_counted_in_the_bill(job):
    soft = predicted(job, work("c45", "through-torch", "oil"), oven(250.0))
    assert soft.bill.items["rework"] > 0.12 * soft.bill.items["treatment"]
