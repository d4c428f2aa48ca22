import pytest

from selector.duty.stiffness import stiffness
from tests.dog import asked


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"part.section.1.length": 400}, True),
        ({"part.section.1.length": 60}, False),
        ({"part.section.1.length": 60, "load.bending": 5}, True),
        ({"part.section.1.length": 400, "load.impact": "hammered"}, False),
        ({"part.shape_class": "coil-spring", "load.bending": 5}, False),
    ],
    ids=["slender", "stubby", "bent", "struck", "spring"],
)
def test_it_is_said_where_it_tempts(changes, said):
    sentence = stiffness(asked(changes))
    assert (sentence is not None) == said
    assert sentence is None or "modulus" in sentence
