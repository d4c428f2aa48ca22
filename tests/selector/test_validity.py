from pathlib import Path

import numpy as np
import pytest

import selector
from selector.validity import LIMITS, breaches

ROWS = [(model, limit) for model, limits in LIMITS.items() for limit in limits]


def test_models_stand_in_the_order_of_their_names():
    assert list(LIMITS) == sorted(LIMITS)


@pytest.mark.parametrize("limit", [r for _, r in ROWS], ids=[f"{m}:{r.name}" for m, r in ROWS])
def test_a_limit_has_room_a_unit_and_a_source(limit):
    assert limit.low < limit.high
    assert limit.unit
    assert limit.source


@pytest.mark.parametrize(("model", "limit"), ROWS, ids=[f"{m}:{r.name}" for m, r in ROWS])
def test_both_ends_are_inside_and_beyond_is_said(model, limit):
    assert breaches(model, {limit.name: [limit.low, limit.high]}) == ()
    step = 0.01 * (limit.high - limit.low)
    for beyond in (limit.low - step, limit.high + step):
        (sentence,) = breaches(model, {limit.name: beyond})
        assert f"{limit.name} {beyond:g} {limit.unit} is outside" in sentence
        assert limit.source in sentence


def test_every_range_is_read_by_something():
    package = Path(selector.__file__).parent
    code = "".join(
        path.read_text(encoding="utf-8")
        for path in package.rglob("*.py")
        if path.name != "validity.py"
    )
    assert [model for model in LIMITS if f'"{model}"' not in code] == []


def test_an_input_without_a_limit_is_passed_over():
    assert breaches("hardenability.heat_curve", {"W": 1e9}) == ()


def test_the_worst_of_many_samples_is_named():
    temperatures = np.array([300.0, 2000.0, np.nan])
    (sentence,) = breaches("tempering.tempered_hardness", {"temperature_c": temperatures})
    assert "2000" in sentence


def test_an_unknown_model_is_a_slip_of_the_programmer():
    with pytest.raises(KeyError, match=r"torch\.brightness"):
        breaches("torch.brightness", {})
