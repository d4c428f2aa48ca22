import pytest

from ui.echo import echo


@pytest.mark.parametrize(
    ("value", "kind", "text"),
    [
        ("28 mm", "length", "1.102 in"),
        (28, "length", "1.102 in"),
        ("1 1/8 in", "length", "28.57 mm"),
        ('1/2"', "length", "12.7 mm"),
        ("90 N m", "torque", "66 lb ft"),
        ("66 lb ft", "torque", "89.48 N m"),
        ("250 °C", "temperature", "482 °F"),
        ("480 degF", "temperature", "248.9 °C"),
        ("50 HRC", "hardness", "513 HV"),
        ("294 HB", "hardness", "31 HRC"),
        ("160 HB", "hardness", "160 HB"),
        ("12 l", "volume", "3.2 US gal"),
        ("5 days", "days", ""),
        ("wide", "length", ""),
        ("", "length", ""),
        (None, "length", ""),
        (True, "length", ""),
    ],
)
def test_a_quantity_is_said_in_the_other_unit(value, kind, text):
    assert echo(value, kind) == text
