"""M. A. Grossmann, Hardenability calculated from chemical composition, AIME Technical
Publication 1437, 1942, abstract. Stated accuracy of the method: 10 to 15 %.
"""

import pytest

from selector.metallurgy.ideal_diameter import multiplying_factors
from tests.printed import agrees


@pytest.mark.parametrize(
    ("element", "content", "printed"),
    [
        pytest.param("Mn", 0.2, "1.67", id="abstract, Mn 0.2"),
        pytest.param("Mn", 0.5, "2.65", id="abstract, Mn 0.5"),
        pytest.param("Mn", 0.7, "3.35", id="abstract, Mn 0.7"),
        pytest.param("Mo", 0.2, "1.63", id="abstract, Mo 0.2"),
    ],
)
def test_factor_within_the_stated_accuracy(element, content, printed):
    factor = float(multiplying_factors({"C": 0.4, element: content})[element])
    assert agrees(factor, printed, scatter=0.10 * float(printed))
