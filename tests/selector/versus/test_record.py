import pytest
from pydantic import ValidationError

from selector.versus.record import SwapOut

SWAP = {
    "axis": "quantity",
    "by": "cost",
    "unit": "pieces",
    "now": 1.0,
    "at": None,
    "low": 1.0,
    "high": 500.0,
    "ahead_now": "first",
    "text": "never",
}


def test_never_is_an_answer():
    assert SwapOut.model_validate(SWAP).at is None


def test_an_axis_nobody_knows_is_refused():
    with pytest.raises(ValidationError, match=r"axis\n.*input_value='weather'"):
        SwapOut.model_validate({**SWAP, "axis": "weather"})
