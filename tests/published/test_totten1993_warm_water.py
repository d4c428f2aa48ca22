"""G. E. Totten, C. E. Bates, N. A. Clinton, Handbook of Quenchants and Quenching Technology,
ASM International, 1993: severity of water at 55 °C, 0.25 m/s past the part: 0.6 (from memory);
Metals Handbook, ASM: water of 20 °C moderately moved 1.2 to 1.3 (from memory).
"""

import pytest

from selector.hardening.bar_cooling import bar_cooling
from selector.heat.boiling import Bath

WARM_PER_IN, USUAL_PER_IN = 0.6, 1.25


@pytest.mark.parametrize("diameter_mm", [4.0, 6.0, 8.0, 12.0, 16.0, 25.0])
def test_warm_water_is_slower_by_the_ratio_of_severities(diameter_mm):
    """The skin's time from 700 to 500 °C; severities of a book scatter by a third or so."""
    warm, usual = (
        bar_cooling(diameter_mm, Bath("water", at_c), 800.0).time_700_500_s[-1]
        for at_c in (55.0, 20.0)
    )
    ratio = USUAL_PER_IN / WARM_PER_IN
    assert ratio / 1.5 < warm / usual < 1.5 * ratio
