"""G. E. Totten, C. E. Bates, N. A. Clinton, Handbook of Quenchants and Quenching Technology,
ASM, 1993: effect of selected quenching conditions on severity number. From memory.
"""

import pytest

from catalog import load_catalog
from tests.printed import agrees


@pytest.mark.parametrize(
    ("medium", "agitation", "printed"),
    [
        pytest.param("fast-oil", "none", "0.5", id="fast oil 60 °C 0 m/s"),
        pytest.param("fast-oil", "moderate", "1.0", id="fast oil 60 °C 0.25 m/s"),
        pytest.param("fast-oil", "violent", "1.5", id="fast oil 60 °C 0.76 m/s"),
        pytest.param("warm-water", "none", "0.2", id="water 55 °C 0 m/s"),
        pytest.param("warm-water", "strong", "1.5", id="water 55 °C 0.51 m/s"),
    ],
)
def test_severity_at_the_printed_velocity(medium, agitation, printed):
    assert agrees(load_catalog().media[medium].severity_per_in[agitation].low, printed)
