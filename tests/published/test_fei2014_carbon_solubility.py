"""Y. Fei and E. Brosh, Experimental study and thermodynamic calculations of phase relations
in the Fe-C system at high pressure, Earth and Planetary Science Letters 408, 2014, 155-162.

Carbon in austenite beside cementite at 1 bar, evaluated from the published database (as
shipped with pycalphad 0.11.2, cfe_broshe.tdb). The parabola claims 0.01 %.
"""

import pytest

from selector.metallurgy.transformation import carbon_solubility
from tests.printed import agrees


@pytest.mark.parametrize(
    ("temperature_c", "printed"),
    [
        (740, "0.795"),
        (780, "0.896"),
        (820, "1.002"),
        (850, "1.084"),
        (900, "1.227"),
        (1000, "1.535"),
    ],
    ids=lambda v: f"{v} °C" if isinstance(v, int) else None,
)
def test_solubility_beside_cementite(temperature_c, printed):
    assert agrees(float(carbon_solubility({}, float(temperature_c))), printed, scatter=0.01)
