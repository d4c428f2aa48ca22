import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from catalog import load_catalog
from selector.decision.duty_gate import contact_factor, duty_gates
from selector.decision.standard import standard_of
from selector.duty.contact import blow_force_n
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.hardness_map import hardness_map
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import GONE, asked, work
from tests.examples import few

CATALOG = load_catalog()
OVEN = Temper("oven", 200.0, 3600.0)
STEP = {"part.section.1.size": 22}
QUIET = {"load.torque": GONE, "load.impact": "none"}


def predicted(job, *named, **given):
    return predict(prepare(work(*named, **given), job), OVEN)


def gates(changes=None, *named, **given_work):
    job = resolved(asked(changes), CATALOG)
    answer = predicted(job, *named, **given_work)
    return {g.name: g for g in duty_gates(answer, answer.surface_hrc, standard_of(job))}


def test_without_contact_blow_mate_or_local_heat_nothing_is_judged():
    assert gates() == {}


def test_a_contact_within_reach_passes_and_one_beyond_fails():
    assert gates({"load.contact": "5 kN"})["contact"].verdict == "pass"
    assert gates({"load.contact": "900 kN"})["contact"].verdict == "fail"


def test_a_shallow_layer_over_a_soft_core_fails_where_the_shear_lies_deeper():
    pressed = {"load.contact": "40 kN", "load.cycles": "static"}
    thin = gates(pressed, "16mncr5", "case-compound", "oil")["contact"]
    assert thin.verdict == "fail"
    assert "needs " in thin.text
    assert gates(pressed, "42crmo4")["contact"].verdict == "pass"


@given(st.floats(1.0, 5e4), st.floats(1.1, 5.0))
@settings(max_examples=few(15))
def test_a_heavier_contact_leaves_less_in_hand(force, times):
    hrc = np.full(512, 50.0)
    light, heavy = (
        contact_factor(hrc, standard_of(resolved(asked({"load.contact": f}), CATALOG)))
        for f in (force, force * times)
    )
    assert np.all(heavy < light)
    assert light[0] / heavy[0] == pytest.approx(math.sqrt(times))


def test_a_blow_taken_elastically_by_hand():
    # 10 J on two lengths of 25 mm round, 30 and 150 mm: F = sqrt(2 E U A / l).
    area = math.pi / 4 * 25**2
    expected = math.sqrt(2 * 206_000 * 10_000 * area / 180)
    assert blow_force_n(asked({"load.impact_energy": "10 J"})) == pytest.approx(expected)
    assert blow_force_n(asked()) is None


@pytest.mark.parametrize(("energy", "verdict"), [("1 J", "pass"), ("2 kJ", "marginal")])
def test_a_blow_beyond_yield_warns_and_does_not_refuse(energy, verdict):
    gate = gates({"load.impact_energy": energy})["blow"]
    assert gate.verdict == verdict
    assert "if the part alone takes it" in gate.text


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        (STEP, "the shoulder at 30 mm"),
        ({"part.feature": [{"kind": "keyway", "at": 33}]}, "the keyway at 33 mm"),
        ({"part.feature": [{"kind": "thread", "at": 24}]}, None),
        ({"part.feature": [{"kind": "cross-hole", "at": 100}]}, None),
        ({}, None),
        ({**STEP, **QUIET}, None),
        ({**STEP, "zone.1.wear": "sliding"}, None),
    ],
    ids=[
        "shoulder",
        "keyway",
        "thread in the hard zone",
        "far hole",
        "plain",
        "no load",
        "hard past it",
    ],
)
def test_hardness_that_ends_at_a_notch_is_marginal(changes, place):
    gate = gates(changes, "c45", "local-torch").get("hard_end")
    assert (gate is not None) == (place is not None)
    if gate is not None:
        assert gate.verdict == "marginal"
        assert place in gate.text


def test_the_hardness_ends_where_its_map_does():
    job = resolved(asked(), CATALOG)
    local = work("c45", route="local-torch")
    (end,) = predicted(job, "c45", route="local-torch").hard_ends_mm
    seen = hardness_map(job.middle(), local, OVEN)
    bought = float(seen.surface()[-1])
    halfway = seen.surface() > 0.5 * (seen.surface().max() + bought)
    assert end == pytest.approx(float(seen.along_mm[halfway].max()), abs=0.25 * 25.0)


def test_what_is_hardened_whole_ends_nowhere():
    assert "hard_end" not in gates(STEP, "c45", "through-torch")


FURNACE = {"route": "through-furnace", "source": "muffle-furnace"}
FURNACED = {"workshop.heat": [{"source": "muffle-furnace"}]}


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({}, True),
        ({"part.stock_removal": 0.3}, False),
        ({"zone.0.wear": "none", "zone.0.hardness": {"min": "50 HRC"}}, False),
        ({"part.feature": [{"kind": "edge", "at": "0 mm"}]}, False),
    ],
    ids=["finished", "ground", "no wear", "edge"],
)
def test_a_soft_skin_left_on_a_wearing_face_is_said(changes, said):
    gate = gates({**FURNACED, **changes}, "c45", **FURNACE).get("skin")
    assert (gate is not None) == said
    if gate is not None:
        assert gate.verdict == "marginal"
        assert "foil" in gate.text


PINION = {"part.section.0.size": 30, "zone.0.wear": "rolling-contact"}


@pytest.mark.parametrize(
    ("depth", "tooth", "verdict"),
    [(0.9, 2.36, "fail"), (0.45, 2.36, "marginal"), (0.3, 6.3, None), (0.9, None, None)],
    ids=["module 1.5", "a thin case", "module 4", "tooth not stated"],
)
def test_a_case_that_goes_through_a_tooth_says_so(depth, tooth, verdict):
    teeth = {"kind": "teeth", "at": 10, **({} if tooth is None else {"size": tooth})}
    changes = {**PINION, "zone.0.depth": depth, "part.feature": [teeth]}
    gate = gates(changes, "16mncr5", "pack-carburise", "oil", "forge").get("core")
    assert (gate.verdict if gate else None) == verdict
    if gate is not None:
        assert "of tooth" in gate.text
