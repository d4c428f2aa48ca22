"""S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, 3rd ed., 1970, section 109: torsion
of a rectangular bar. From memory.
"""

import pytest

from selector.mechanics.section import section_modulus
from tests.printed import agrees


@pytest.mark.parametrize(
    ("aspect", "stiffness", "strength"),
    [
        pytest.param(1.0, "0.141", "0.208", id="b/t 1"),
        pytest.param(1.5, "0.196", "0.231", id="b/t 1.5"),
        pytest.param(2.0, "0.229", "0.246", id="b/t 2"),
        pytest.param(3.0, "0.263", "0.267", id="b/t 3"),
        pytest.param(5.0, "0.291", "0.291", id="b/t 5"),
        pytest.param(1e5, "0.333", "0.333", id="b/t infinite"),
    ],
)
def test_rectangle(aspect, stiffness, strength):
    flat = section_modulus("flat", 10.0, 10.0 * aspect)
    assert agrees(float(flat.torsion_constant_mm4) / (aspect * 1e4), stiffness)
    assert agrees(float(flat.torsion_mm3) / (aspect * 1e3), strength)
