import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.softening_gate import hot_gates, keeps_hard, softening_gate
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import asked, work

KILN = {
    "workshop.heat": [{"source": "kiln"}],
    "part.feature": [],
    "load": {"impact": "none", "cycles": "static"},
}


def _job(service_c, low, high, **changes):
    hot = {
        **KILN,
        "limit.service_temperature": f"{service_c} degC",
        "zone.0.hardness": {"min": f"{low} HRC", "max": f"{high} HRC"},
        **changes,
    }
    return resolved(asked(hot), load_catalog())


def _gate(job, steel, medium, temper_c):
    made = work(steel, "through-furnace", medium, "kiln")
    option = predict(prepare(made, job), Temper("furnace", float(temper_c), 3600.0, 2))
    return softening_gate(option, job), keeps_hard(option, job)


@pytest.mark.parametrize(
    ("steel", "medium", "service_c", "window", "temper_c", "verdicts"),
    [
        ("x40crmov5-1", "air", 450, (44, 50), 600, {None}),
        ("x40crmov5-1", "air", 600, (44, 50), 600, {"marginal", "fail"}),
        ("51crv4", "oil", 480, (38, 44), 510, {"marginal", "fail"}),
        ("42crmo4", "oil", 350, (46, 52), 380, {"marginal", "fail"}),
        ("115crv3", "water", 270, (58, 62), 250, {"marginal", "fail"}),
        ("100mncrw4", "oil", 120, (58, 62), 200, {None, "pass"}),
        ("c45", "water", 150, (50, 56), 200, {None, "pass"}),
    ],
)  # fmt: skip
def test_the_hours_of_service_go_on_with_the_temper(
    steel, medium, service_c, window, temper_c, verdicts
):
    gate, kept = _gate(_job(service_c, *window), steel, medium, temper_c)
    assert (gate.verdict if gate else None) in verdicts
    assert kept is not None
    assert (gate is None) == bool(np.all(kept))


def test_a_tool_that_is_struck_hot_is_redressed_and_cold_service_takes_nothing():
    struck = _job(450, 44, 50, load={"impact": "hammered", "cycles": "fatigue"})
    assert _gate(struck, "51crv4", "oil", 500) == (None, None)
    cold = resolved(asked(KILN), load_catalog())
    assert _gate(cold, "51crv4", "oil", 500) == (None, None)


def test_the_worse_of_last_heat_and_hours_is_the_one_that_is_said():
    job = _job(480, 38, 44)
    said = {}
    for temper_c in (400, 510):
        made = work("51crv4", "through-furnace", "oil", "kiln")
        temper = Temper("furnace", float(temper_c), 3600.0, 2)
        (gate,) = hot_gates(predict(prepare(made, job), temper), job)
        said[temper_c] = gate
    assert said[400].verdict == "fail"
    assert "hotter than its last heat" in said[400].text
    assert "100 h at 480 °C" in said[510].text
