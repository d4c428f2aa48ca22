import pytest
from pydantic import ValidationError

from selector.need.record import PlainBar
from selector.record import Spread

HARD = Spread(
    p05=1.0, p50=2.0, p95=3.0, unit="HRC", relation="r", inputs={}, source="s", validity=()
)


def test_the_record_is_frozen_and_closed():
    bar = PlainBar(steel="C45", condition="hot-rolled", hardness=HARD, text="C45")
    with pytest.raises(ValidationError, match=r"steel\n  Instance is frozen"):
        bar.steel = "C60"
    with pytest.raises(ValidationError, match=r"price\n  Extra inputs.*input_value=3"):
        PlainBar.model_validate({**bar.model_dump(), "price": 3})
