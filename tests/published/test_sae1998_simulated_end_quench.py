"""SAE J406, Methods of determining hardenability of steels, 1998: cooling rate at 1300 °F by
position on the end-quench bar. From memory.

The simulated bar has one free number, the exchange under the spray. Scatter: charts of
different books differ by 10 to 25 %.
"""

import pytest

from selector.heat.end_quench import end_quench_rate_c_per_s
from tests.printed import agrees

SCATTER = 0.25
AT_THE_SPRAY = pytest.mark.xfail(
    strict=True,
    reason="the chart's rate next to the spray calls for half the exchange of its other rates",
)
# °F/s at 1/16, 2/16 ... 16/16 in from the quenched end.
PRINTED = (
    *("490", "305", "195", "125", "77", "56", "42", "33"),
    *("26", "21.4", "18", "16.3", "14", "12.4", "11", "10.0"),
)


@pytest.mark.parametrize(
    ("sixteenths", "printed"),
    [
        pytest.param(n, text, id=f"{n} sixteenths", marks=AT_THE_SPRAY if n == 1 else ())
        for n, text in enumerate(PRINTED, 1)
    ],
)
def test_cooling_rate_along_the_bar(sixteenths, printed):
    rate_f_per_s = 1.8 * float(end_quench_rate_c_per_s(sixteenths * 25.4 / 16))
    assert agrees(rate_f_per_s, printed, SCATTER * float(printed))
