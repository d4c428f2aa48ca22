import numpy as np
import pytest
from pydantic import BaseModel, ValidationError

from selector import record as shapes
from selector.figure import Provenance, figure
from selector.gate import Gate, judged
from selector.record import GateOut, Plain, Spread, gate_out, rounded, sampled_out, spread_out

RECORDS = [
    record
    for record in vars(shapes).values()
    if isinstance(record, type) and issubclass(record, Plain) and record is not Plain
]
SPREAD = {
    "p05": 1.0, "p50": 2.0, "p95": 3.0, "unit": "HRC", "relation": "a", "inputs": {},
    "source": "b", "validity": (),
}  # fmt: skip


@pytest.mark.parametrize("record", RECORDS, ids=lambda r: r.__name__)
def test_a_record_says_what_it_is_and_refuses_what_it_does_not_know(record):
    assert record.__doc__
    with pytest.raises(ValidationError, match="surprise\n  Extra inputs are not permitted"):
        record.model_validate({"surprise": 1})


def test_a_record_cannot_be_changed():
    gate = GateOut(name="snap", verdict="pass", share=None, text="t")
    with pytest.raises(ValidationError, match="verdict\n  Instance is frozen"):
        gate.verdict = "fail"


@pytest.mark.parametrize("key", ["unit", "relation", "source", "validity"])
def test_a_number_without_its_provenance_is_refused(key):
    with pytest.raises(ValidationError, match=f"{key}\n  Field required"):
        Spread.model_validate({k: v for k, v in SPREAD.items() if k != key})


def test_a_number_that_does_not_exist_is_none_and_not_left_out():
    unknown = Spread.model_validate({**SPREAD, "p50": None})
    assert unknown.p50 is None
    with pytest.raises(ValidationError, match="p50\n  Field required"):
        Spread.model_validate({k: v for k, v in SPREAD.items() if k != "p50"})


def test_every_field_is_plain_data():
    for record in RECORDS:
        assert issubclass(record, BaseModel)
        assert record.model_json_schema()["additionalProperties"] is False


def test_a_gate_is_rounded_and_nothing_else():
    gate = judged("depth", np.arange(300) < 100, "needs 2 mm; predicted 1.5 mm")
    assert gate_out(gate).model_dump() == {
        "name": "depth",
        "verdict": "fail",
        "share": 0.3333,
        "text": "needs 2 mm; predicted 1.5 mm",
    }
    assert gate_out(Gate("stock", "fail", "sold up to 50 mm")).share is None


def test_a_number_that_does_not_exist_is_none():
    assert rounded(float("nan")) is None
    assert rounded(1.23456) == 1.235


def test_samples_are_said_by_their_middle_and_range_with_their_origin():
    origin = Provenance("mm", "by rule", "a book", {"size": 3.0}, ("too thin",))
    values = np.linspace(0.0, 10.0, 101)
    known = spread_out(figure(values, origin))
    assert (known.p05, known.p50, known.p95) == (0.5, 5.0, 9.5)
    assert (known.unit, known.relation, known.source) == ("mm", "by rule", "a book")
    assert known.validity == ("too thin",)
    short = sampled_out(values, "mm", "by rule", "a book", {"size": 3.0})
    assert short == known.model_copy(update={"validity": ()})
    assert sampled_out(np.array([1.0, np.nan]), "mm", "by rule", "a book").p50 is None
