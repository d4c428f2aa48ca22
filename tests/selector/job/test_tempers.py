"""Which tempers are tried on a treatment, by what it is heated with."""

import pytest

from selector.job.tempers import tempers
from tests.dog import work

FIRE = {"plate": 350.0, "torch": 330.0, "sand": 475.0}


@pytest.mark.parametrize(
    ("steel", "past_colours"),
    [("42crmo4", True), ("51crv4", True), ("c75s", True), ("c60", True),
     ("100mncrw4", False), ("115crv3", False), ("c105u", False), ("100cr6", False)],
)  # fmt: skip
def test_steel_for_hard_edges_is_not_let_down_in_sand(steel, past_colours):
    tried = tempers(work(steel, "through-torch", "oil"), FIRE)
    assert any(temper.means == "plate" for temper in tried)
    assert any(temper.means == "sand" for temper in tried) is past_colours


def test_hot_work_steel_is_tempered_past_its_second_hardness():
    kiln = {"furnace": 700.0, "oven": 250.0}
    hot, cold = (
        [t.temperature_c for t in tempers(work(slug, "through-furnace", "air", "kiln"), kiln)
         if t.means == "furnace"]
        for slug in ("x40crmov5-1", "x153crmov12")
    )  # fmt: skip
    assert min(hot) == 500.0
    assert min(cold) == 150.0
