import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.breaking_gate import breaking_gates, is_bound_to_fail
from selector.decision.judgement import judge
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.prediction import embrittled, predict
from selector.option.preparation import prepare
from tests.dog import asked, work

CATALOG = load_catalog()


def oven(temperature_c):
    return Temper("oven", float(temperature_c), 3600.0)


def case(changes=None, treatment=None, temper=None):
    """Return an option predicted for the dog, changed, and its job."""
    job = resolved(asked(changes), CATALOG)
    bar = treatment or work("42crmo4")
    return predict(prepare(bar, job), temper or oven(200)), job


def gates(changes=None, treatment=None, temper=None):
    prediction, job = case(changes, treatment, temper)
    return {gate.name: gate for gate in breaking_gates(prediction, job.asked.load)}


def test_only_what_is_quenched_can_crack():
    assert set(gates()) == {"cracking", "snap"}
    bought = work("c45", "as-bought", None, None)
    assert set(gates(treatment=bought, temper=NO_TEMPER)) == {"snap"}


@pytest.mark.parametrize(("impact", "verdict"), [("none", "marginal"), ("hammered", "fail")])
def test_unknown_toughness_passes_narrowly_unless_it_is_struck(impact, verdict):
    snap = gates({"load.impact": impact}, temper=NO_TEMPER)["snap"]
    assert snap.verdict == verdict
    assert snap.share is None
    assert "toughness unknown" in snap.text


def test_a_struck_part_wants_more_than_straw():
    snap = gates({"load.impact": "hammered"}, work("c60"), oven(200))["snap"]
    assert (snap.verdict, snap.text.split(":")[1]) == ("fail", " straw chips, temper it hotter")


@pytest.mark.parametrize(("heat_c", "fails"), [(225, False), (325, True), (450, False)])
def test_what_is_struck_is_not_tempered_where_the_steel_turns_brittle(heat_c, fails):
    temper = Temper("furnace", float(heat_c), 3600.0)
    snap = gates({"load.impact": "hammered"}, temper=temper)["snap"]
    assert (snap.verdict == "fail" and "turns brittle" in snap.text) is fails
    tapped = gates({"load.impact": "light"}, temper=temper)["snap"]
    assert tapped.verdict != "fail"


@pytest.mark.parametrize("impact", ["none", "light", "hammered"])
@pytest.mark.parametrize("temper", [NO_TEMPER, oven(150), oven(200), oven(250)])
@pytest.mark.parametrize("service", [None, "190 °C"])
def test_what_is_bound_to_fail_fails_when_predicted(impact, temper, service):
    changes = {"load.impact": impact, "limit.service_temperature": service}
    changes = {name: value for name, value in changes.items() if value is not None}
    prediction, job = case(changes, temper=temper)
    failed = {g.name for g in judge(prediction, 1.0, job).gates if g.verdict == "fail"}
    bound = (failed & {"service_heat"}) or (
        "snap" in failed and bool(np.isnan(prediction.snap_margin_hrc).any())
    )
    amiss = temper.temperature_c < 225 or embrittled(prediction.treatment, temper)
    struck = impact == "hammered" and "snap" in failed and amiss
    assert is_bound_to_fail(prediction.treatment, temper, job.asked) is bool(bound or struck)


def test_bar_as_bought_is_never_bound_to_fail():
    struck = asked({"load.impact": "hammered"})
    assert not is_bound_to_fail(work("c45", route="as-bought"), NO_TEMPER, struck)


def test_a_temper_where_the_steel_turns_brittle_never_just_passes():
    """Blue on chromium-molybdenum steel: usable at a pinch, and said so."""
    blue = gates({"load.impact": "none"}, work("42crmo4"), oven(325))["snap"]
    straw = gates({"load.impact": "none"}, work("42crmo4"), oven(200))["snap"]
    assert (blue.verdict, straw.verdict) == ("marginal", "pass")
    assert blue.text.startswith("325 °C is where this steel turns brittle; ")
