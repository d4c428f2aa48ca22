"""Sheffield Gauge Plate Ltd, temper colour chart for ground flat stock, undated page (checked
2026).
"""

import pytest

from selector.heat.colour import temper_colour


@pytest.mark.parametrize(
    ("temperature_c", "name"),
    [
        pytest.param(210, "pale yellow", id="light yellow 210"),
        pytest.param(220, "straw", id="straw 220"),
        pytest.param(240, "dark straw", id="dark yellow 240"),
        pytest.param(250, "brown", id="yellow brown 250"),
        pytest.param(260, "brown", id="red brown 260"),
        pytest.param(270, "purple", id="purple 270"),
        pytest.param(280, "violet", id="violet 280"),
        pytest.param(300, "blue", id="wedgewood blue 300"),
        pytest.param(330, "grey", id="grey green 330"),
    ],
)
def test_a_printed_temper_has_its_colour(temperature_c, name):
    assert temper_colour(temperature_c).name == name
