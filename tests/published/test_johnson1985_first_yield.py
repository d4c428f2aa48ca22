"""K. L. Johnson, Contact Mechanics, Cambridge, 1985, sections 4.2 and 6.1: sub-surface shear,
and peak pressure at first yield by the greatest shear stress, Poisson's ratio 0.3. From
memory.
"""

import pytest

from selector.mechanics.contact import hertz_line, hertz_point, line_shear_mpa
from tests.printed import agrees


@pytest.mark.parametrize(
    ("contact", "yield_ratio", "depth"),
    [
        pytest.param(hertz_point(1000.0, 10.0), "1.6", "0.48", id="sphere"),
        pytest.param(hertz_line(1000.0, 10.0), "1.67", "0.78", id="line"),
    ],
)
def test_first_yield(contact, yield_ratio, depth):
    assert agrees(float(contact.pressure_mpa / (2 * contact.shear_mpa)), yield_ratio)
    # The line's depth is printed as 0.78 and, in other texts, 0.786.
    ratio = float(contact.shear_depth_mm / contact.half_width_mm)
    assert agrees(ratio, depth, scatter=0.006)


@pytest.mark.parametrize(
    ("depth", "printed"),
    [
        pytest.param(0.0, "0.000", id="section 4.2, surface"),
        pytest.param(0.78, "0.30", id="section 4.2, greatest"),
    ],
)
def test_shear_on_the_axis_of_a_line(depth, printed):
    line = hertz_line(1000.0, 10.0)
    shear = line_shear_mpa(line, depth * float(line.half_width_mm))
    assert agrees(float(shear / line.pressure_mpa), printed)
