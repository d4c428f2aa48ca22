import pytest

from selector.errors import RequirementError
from selector.job.job import resolved
from selector.versus.option_id import option_of
from tests.dog import FEW, asked, only

NEAR = resolved(asked(), only(*FEW))
GOOD = "c45/cold-drawn/local-torch.oil/oven-200c-60min"


def test_an_id_is_found_again(advice):
    for option in advice.options:
        treatment, temper = option_of(option.id, NEAR)
        assert f"{treatment.label}/{temper.label}" == option.id


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("nonsense", r"option must be the id of a known option; got 'nonsense'\. Nearest: "),
        (
            "c45/cold-drawn/local-torch.brine/oven-200c-60min",
            r"got 'c45/cold-drawn/local-torch\.brine.*Nearest: c45/cold-drawn/local-torch\.",
        ),
        (
            "c45/cold-drawn/local-torch.oil/oven-203c-60min",
            r"a temper that c45/cold-drawn/local-torch\.oil .*got 'oven-203c.*oven-200c-60min",
        ),
        (
            "s235/cold-drawn/local-torch.oil/oven-200c-60min",
            r"one that this workshop could attempt on this part; got .*carbon must be added",
        ),
    ],
    ids=["nothing like it", "no such bath", "no such temper", "stopped by a gate"],
)
def test_what_is_no_option_is_refused_with_the_nearest(name, said):
    with pytest.raises(RequirementError, match=said):
        option_of(name, NEAR)


def test_blanks_about_an_id_do_no_harm():
    assert option_of(f" {GOOD} ", NEAR)[1].label == "oven-200c-60min"
