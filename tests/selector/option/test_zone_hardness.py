import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.stock import stock_of
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.preparation import prepare
from selector.option.zone import working_radius_mm
from selector.option.zone_hardness import zone_hardness
from tests.dog import asked, work

CATALOG = load_catalog()
OVEN = Temper("oven", 200.0, 3600.0)
THICK = {"part.section.0.size": 60, "part.section.0.length": 60, "part.section.1.size": 60}


def near(changes=None):
    return resolved(asked(changes), CATALOG)


def hardness(treatment, temper=OVEN, job=None, changes=None):
    job = job or near(changes)
    ready = prepare(treatment, job)
    return ready, zone_hardness(ready, temper)


def bought(steel, route, condition=None):
    return work(steel, route, None, None, condition)


def test_bar_left_as_bought_is_the_same_all_through(job):
    ready, found = hardness(bought("c45", "as-bought"), NO_TEMPER, job)
    for part in (found.surface, found.core, found.shank):
        np.testing.assert_array_equal(part, ready.supply_hrc)
    assert found.sections.shape == (job.count, 2)


def test_a_ready_hard_shaft_has_a_hard_skin_over_a_soft_core(job):
    _, found = hardness(bought("linear-shaft", "buy-hard-element"), NO_TEMPER, job)
    assert np.median(found.surface) > 55
    assert (found.core < 25).all()
    depth = CATALOG.steels["linear-shaft"].condition[0].depth_mm.value
    assert (found.depth_mm == depth).all()


def test_a_local_torch_leaves_the_rest_of_prehard_bar_as_supplied(job):
    treatment = work("42crmo4", "local-torch", "oil", "oxy-propane", "prehard")
    ready, found = hardness(treatment, job=job)
    np.testing.assert_allclose(found.shank, ready.supply_hrc, atol=0.3)
    # The section beside the zone bears its load with the soft ring.
    assert (found.sections[:, 1] <= ready.supply_hrc + 1e-6).all()
    assert np.median(found.surface) > np.median(ready.supply_hrc) + 15


@pytest.mark.parametrize("medium", ["oil", "water"])
def test_a_local_torch_leaves_the_middle_of_a_thick_part_softer(medium):
    treatment = work("42crmo4", "local-torch", medium, "oxy-propane", "prehard")
    job = near({**THICK, "workshop.heat": [{"source": "oxy-propane", "gas_flow": 4}]})
    ready, found = hardness(treatment, job=job)
    # What never turned was tempered on the way up, at most to what the steel is annealed; how
    # far depends on a temper before that nobody knows.
    softest = stock_of(treatment.steel, treatment.condition).softest_hrc
    assert (found.core >= softest).all()
    assert np.quantile(ready.supply_hrc - found.core, 0.95) < 8.0
    # A flame that goes over the end of the bar too takes its time, and the middle warms.
    assert np.median(found.core) < np.median(found.surface) - 2


def test_a_whole_quench_hardens_the_shank_too(job):
    _, found = hardness(work("42crmo4"), job=job)
    assert np.median(found.shank) > 45


@pytest.mark.parametrize(
    ("steel", "bath"), [("16mncr5", "oil"), ("s235", "water"), ("20nicrmo2-2", "oil")]
)
def test_a_case_is_hard_over_a_core_of_its_own(job, steel, bath):
    treatment = work(steel, "pack-carburise", bath, None)
    ready, found = hardness(treatment, Temper("oven", 150.0, 3600.0), job)
    assert np.median(found.surface) > 55
    assert (found.core < found.surface).all()
    assert (found.core >= ready.supply_hrc).all()
    np.testing.assert_array_equal(found.sections[:, 0], found.core)
    assert 0.2 < np.median(found.depth_mm) < 0.6


def test_a_case_softens_with_its_temper(job):
    treatment = work("16mncr5", "pack-carburise", "oil", None)
    cool, warm = (
        hardness(treatment, Temper("oven", t, 3600.0), job)[1].surface for t in (150.0, 200.0)
    )
    assert (warm < cool).all()


def test_alloy_gives_a_case_a_harder_core(job):
    lean, rich = (
        hardness(work(steel, "pack-carburise", "oil", None), OVEN, job)[1].core
        for steel in ("s235", "18crnimo7-6")
    )
    assert np.median(rich) > np.median(lean) + 5


def test_a_nitrided_layer_lies_on_the_core_as_sold(job):
    treatment = work("42crmo4", "subcontract-nitride", None, None, "prehard")
    ready, found = hardness(treatment, NO_TEMPER, job)
    np.testing.assert_array_equal(found.core, ready.supply_hrc)
    assert np.median(found.surface) > np.median(found.core) + 15
    assert (found.depth_mm < 1).all()


def test_an_aged_part_is_even_through(job):
    treatment = work("x5crnicunb16-4", "age-harden", None, None)
    heats = [heat for heat, _ in treatment.steel.aged.curve_hrc.points]
    _, found = hardness(treatment, Temper("furnace", heats[0], 3600.0), job)
    np.testing.assert_array_equal(found.core, found.surface)
    assert (found.depth_mm == working_radius_mm(job)).all()


@pytest.mark.parametrize("names", [("c45", "water"), ("42crmo4", "oil"), ("115crv3", "oil")])
def test_depth_stays_inside_the_section(job, names):
    _, found = hardness(work(names[0], medium=names[1]), job=job)
    assert (found.depth_mm >= 0).all()
    assert (found.depth_mm <= working_radius_mm(job)).all()


def test_less_asked_for_reaches_deeper():
    depths = [
        np.median(
            hardness(
                work("c45", "through-furnace", "water", "muffle-furnace"),
                changes={"zone.0.hardness": {"min": f"{hrc} HRC"}, **THICK},
            )[1].depth_mm
        )
        for hrc in (56, 50, 44)
    ]
    assert depths == sorted(depths)
    assert depths[0] < depths[-1]


def test_a_larger_section_never_hardens_deeper_as_a_share():
    shares = []
    for size in (10, 20, 40, 60):
        changes = {"part.section.0.size": size, "part.section.1.size": size}
        job = near(changes)
        _, found = hardness(work("c45", medium="water"), job=job)
        shares.append(np.median(found.depth_mm) / working_radius_mm(job))
    assert shares == sorted(shares, reverse=True)


def test_relation_source_and_temper_are_said(job):
    _, found = hardness(work("c45"), job=job)
    assert found.relation.endswith("then tempered oven-200c-60min")
    assert found.source == "hardenability.heat_curve"
    assert found.validity == ()


def test_a_temper_outside_the_model_is_marked(job):
    _, found = hardness(work("51crv4"), job=job)
    assert any("V 0.175 wt %" in sentence for sentence in found.validity)
    _, untempered = hardness(work("51crv4"), NO_TEMPER, job)
    assert untempered.validity == ()
    _, published = hardness(work("115crv3"), job=job)
    assert published.validity == ()


def test_the_thickest_section_of_the_working_zone_counts():
    job = near({"part.section.0.size": 20, "part.section.1.size": 40})
    assert working_radius_mm(job) == 10


def test_what_is_ground_off_a_case_is_missing_from_it():
    treatment = work("16mncr5", "pack-carburise", "oil", "forge")
    # Asked so deep that the route cannot grow more to allow for it.
    _, whole = hardness(treatment, changes={"zone.0.depth": 4.0})
    _, ground = hardness(treatment, changes={"zone.0.depth": 4.0, "part.stock_removal": 0.1})
    left = np.maximum(whole.depth_mm - 0.1, 0)
    np.testing.assert_allclose(ground.depth_mm, left)
    _, through = hardness(treatment, changes={"part.stock_removal": 5})
    np.testing.assert_array_equal(through.depth_mm, 0.0)
    assert (through.surface >= through.core).all()


def test_normalised_bar_is_what_air_leaves_of_it():
    # Cold drawing is gone, and bar that hardens a little in air is no annealed bar.
    job = resolved(asked(), CATALOG)
    drawn = work("c45", "normalise", "air", "kiln", condition="cold-drawn")
    found = zone_hardness(prepare(drawn, job), NO_TEMPER)
    assert np.median(found.surface) < np.median(prepare(drawn, job).supply_hrc)


def test_annealed_bar_is_as_soft_as_the_softest_sold():
    job = resolved(asked(), CATALOG)
    soft = zone_hardness(
        prepare(work("42crmo4", "anneal", None, "kiln", condition="prehard"), job), NO_TEMPER
    )
    sold = prepare(work("42crmo4", "as-bought", None, None, condition="annealed"), job)
    assert np.median(soft.surface) == pytest.approx(np.median(sold.supply_hrc))


def test_bainite_softens_with_the_salt_and_passes_no_martensite():
    job = resolved(asked(), CATALOG)
    ready = prepare(work("51crv4", "austemper", "hot-salt", "kiln"), job)
    cool, hot = (
        np.median(zone_hardness(ready, Temper("salt", at_c, 1500.0)).surface)
        for at_c in (300.0, 400.0)
    )
    fresh = np.median(zone_hardness(ready, NO_TEMPER).surface)
    assert hot < cool < fresh


def test_a_cold_step_hardens_what_kept_austenite():
    job = resolved(asked(), CATALOG)
    plain, cold = (
        np.median(
            zone_hardness(
                prepare(work("x153crmov12", r, "air", "kiln"), job), NO_TEMPER
            ).surface
        )
        for r in ("through-furnace", "through-furnace-cold")
    )
    assert 0.5 < cold - plain < 3.0
