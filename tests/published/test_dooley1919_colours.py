"""W. H. Dooley, Applied Science for Metal Workers, New York, 1919, section Tempering: colours
of hot steel and temper colours, °F.
"""

import pytest

from selector.heat.colour import HEAT_COLOURS, TEMPER_COLOURS
from tests.printed import agrees


def fahrenheit(celsius):
    return celsius * 1.8 + 32


@pytest.mark.parametrize(
    ("celsius", "printed"),
    [
        pytest.param(HEAT_COLOURS["cherry"].high_c, "1655", id="cherry red, hottest table"),
        pytest.param(HEAT_COLOURS["bright cherry"].high_c, "1870", id="bright red, hottest"),
        pytest.param(TEMPER_COLOURS["straw"].high_c, "460", id="straw yellow, hottest"),
        pytest.param(TEMPER_COLOURS["dark straw"].high_c, "480", id="dark straw, hottest"),
        pytest.param(TEMPER_COLOURS["brown"].high_c, "500", id="brownish yellow, hottest"),
        pytest.param(TEMPER_COLOURS["violet"].high_c, "550", id="dark purple, hottest"),
    ],
)
def test_the_range_of_a_colour_ends_at_this_table(celsius, printed):
    assert agrees(fahrenheit(celsius), printed)


@pytest.mark.parametrize(
    ("name", "temperature_f"),
    [("dull red", 1290), ("dark cherry", 1470), ("orange", 2010), ("white", 2370)],
)
def test_a_printed_heat_lies_in_the_range(name, temperature_f):
    colour = HEAT_COLOURS[name]
    assert colour.low_c <= (temperature_f - 32) / 1.8 <= colour.high_c
