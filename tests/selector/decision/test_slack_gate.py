import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.judgement import judge
from selector.decision.slack_gate import slack_gate, took
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import GONE, asked, work

CATALOG = load_catalog()
LOW = Temper("oven", 200.0, 3600.0)
QUIET = {"load.torque": GONE, "load.impact": "none", "load.cycles": "static"}
THICK, THIN = ({f"part.section.{n}.size": size for n in (0, 1)} for size in (25, 5))


def gate(changes, *named, temper=LOW):
    job = resolved(asked(changes), CATALOG)
    return slack_gate(predict(prepare(work(*named), job), temper), job.asked)


@pytest.mark.parametrize(
    ("changes", "named", "verdict"),
    [
        (THICK, ("c105u", "through-furnace", "oil"), "fail"),
        (THICK, ("c75s", "through-furnace", "oil"), "fail"),
        (THICK, ("c105u", "through-furnace", "water"), "pass"),
        (THIN, ("115crv3", "through-furnace", "oil"), "pass"),
        (THICK, ("42crmo4", "through-furnace", "oil"), "pass"),
        (THICK, ("51crv4", "through-furnace", "oil"), "pass"),
        ({**THICK, **QUIET}, ("c75s", "through-furnace", "oil"), None),
        (
            {**THICK, **QUIET, "load.cycles": "fatigue"},
            ("c75s", "through-furnace", "oil"),
            "fail",
        ),
    ],
)
def test_a_rim_that_did_not_harden_is_no_temper_where_it_bears(changes, named, verdict):
    answer = gate(changes, *named)
    assert (answer and answer.verdict) == verdict


def test_bar_softened_below_what_pearlite_has_may_be_slack():
    soft = Temper("furnace", 650.0, 3600.0)
    assert gate(THICK, "c45", "through-furnace", "oil", temper=soft).verdict == "pass"


def test_a_case_that_never_reaches_550_hv_is_slack():
    job = resolved(asked(THICK), CATALOG)
    answer = predict(prepare(work("c15", "case-compound", "oil"), job), LOW)
    none = answer.depth_mm == 0.0
    assert none.any()
    np.testing.assert_array_equal(took(answer, job.asked), ~none | (answer.surface_hrc < 35.0))


def test_a_sample_that_is_slack_does_not_come_out_right():
    job = resolved(asked(THICK), CATALOG)
    answer = predict(prepare(work("c75s", "through-furnace", "oil"), job), LOW)
    judged = judge(answer, 0.0, job)
    assert not (judged.right & ~took(answer, job.asked)).any()


@pytest.mark.parametrize(("steel", "verdict"), [("s2", "fail"), ("c45", "pass")])
def test_what_air_hardens_is_not_normalised_and_left_untempered(steel, verdict):
    none = Temper("none", 0.0, 0.0)
    answer = gate({**THIN, **QUIET}, steel, "normalise", "air", temper=none)
    assert answer.verdict == verdict
