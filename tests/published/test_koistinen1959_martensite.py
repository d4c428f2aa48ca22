"""D. P. Koistinen and R. E. Marburger, A general equation prescribing the extent of the
austenite-martensite transformation, Acta Metallurgica 7, 1959, 59-60 (from memory).
"""

import math

import pytest

from selector.metallurgy.martensite import fraction
from tests.printed import agrees


@pytest.mark.parametrize("below_c", [10.0, 100.0, 250.0])
def test_exponent_of_the_equation(below_c):
    retained = 1.0 - float(fraction(300.0, 300.0 - below_c))
    assert agrees(-math.log(retained) / below_c, "1.10e-2")
