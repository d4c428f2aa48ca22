import pytest
from pydantic import ValidationError

from selector.advice import record as shapes
from selector.record import Plain

RECORDS = [
    record
    for record in vars(shapes).values()
    if isinstance(record, type) and record.__module__ == shapes.__name__
]


@pytest.mark.parametrize("record", RECORDS, ids=lambda r: r.__name__)
def test_a_record_says_what_it_is_and_refuses_what_it_does_not_know(record):
    assert record.__doc__
    assert issubclass(record, Plain)
    assert record.model_json_schema()["additionalProperties"] is False
    with pytest.raises(ValidationError, match="surprise\n  Extra inputs are not permitted"):
        record.model_validate({"surprise": 1})


def test_the_whole_advice_is_among_them():
    assert "AdviceOut" in {record.__name__ for record in RECORDS}
