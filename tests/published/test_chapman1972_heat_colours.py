"""W. A. J. Chapman, Workshop Technology, part 1, 5th ed., 1972: colours of heat by
temperature range, as quoted in an encyclopaedia article on red heat.
"""

import pytest

from selector.heat.colour import HEAT_COLOURS, heat_colour


@pytest.mark.parametrize(
    ("low_c", "high_c", "name"),
    [
        pytest.param(594, 704, "dull red", id="very dark red 594-704"),
        pytest.param(705, 814, "dark cherry", id="dark red 705-814"),
        pytest.param(815, 870, "cherry", id="cherry red 815-870"),
        pytest.param(871, 981, "bright cherry", id="light cherry red 871-981"),
        pytest.param(982, 1092, "orange", id="orange 982-1092"),
    ],
)
def test_the_middle_of_each_printed_range_has_its_colour(low_c, high_c, name):
    assert heat_colour((low_c + high_c) / 2).name == name
    assert low_c < HEAT_COLOURS[name].temperature_c < high_c
