"""ASM, Heat Treater's Guide, 1982, p. 25: depth of case of SAE 1008 in a cyanide bath or by
carbonitriding, as quoted in a forum of gunsmiths read in 2026. Nothing of it was used in a fit.
"""

import pytest

from tests.layer_forecast import case_samples, celsius, inside

# Middle of the printed °F range, h, inches.
CHART = [
    (1437, 1, "0.004"), (1437, 2, "0.006"), (1437, 3, "0.009"), (1437, 4, "0.011"),
    (1612, 1, "0.015"), (1612, 2, "0.021"), (1612, 3, "0.026"), (1612, 4, "0.030"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("fahrenheit", "hours", "inches"),
    CHART,
)
def test_a_bath_cases_as_deep_as_charted(fahrenheit, hours, inches):
    forecast = case_samples("liquid", celsius(fahrenheit), hours, core=0.08, total=True)
    assert inside(25.4 * float(inches), forecast)
