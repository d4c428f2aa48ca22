import pytest

from selector.procedure.laid import set_up
from selector.procedure.lines import short_lines
from selector.procedure.protection import protection
from tests.procedure import KILN, doing, steps_of


@pytest.mark.parametrize(
    ("treatment", "kept", "words"),
    [
        (("x153crmov12", "through-furnace", "air", KILN), "foil", "stainless tool foil"),
        (("60wcrv8", "through-furnace", "oil", KILN), "coat", "anti-scale compound"),
        (("100mncrw4", "through-furnace", "oil", KILN), "bare", "soft skin of up to 0."),
        (("42crmo4", "local-torch", "oil"), "none", "nozzle"),
    ],
    ids=["air", "hot", "cool", "torch"],
)
def test_the_skin_is_kept_by_what_heat_and_quench_allow(treatment, kept, words):
    do = doing(*treatment)
    assert protection(do) == kept
    assert words in set_up(do).action


@pytest.mark.parametrize(
    ("treatment", "has", "begins"),
    [
        (("x153crmov12", "air"), (), "wrap in stainless foil (to buy), heat to "),
        (("x153crmov12", "air"), ("foil",), "wrap in stainless foil, heat to "),
        (("60wcrv8", "oil"), ("foil",), "pack in a pipe of cast-iron chips"),
        (("60wcrv8", "oil"), ("foil", "coat"), "coat with anti-scale compound, heat to "),
        (("60wcrv8", "oil"), (), "coat with anti-scale compound (to buy), heat to "),
        (("100mncrw4", "oil"), (), "charcoal beside it against a soft skin, heat to "),
    ],
)
def test_what_a_hot_soak_is_counted_on_stands_in_the_short_procedure(treatment, has, begins):
    steel, medium = treatment
    shop = {**KILN, "workshop.protect": list(has)}
    steps = steps_of(steel, "through-furnace", medium, shop)
    lines = [line for line in short_lines(steps) if "heat to " in line]
    assert begins in lines[0]
    assert ("wrap" in lines[0] or "coat" in lines[0]) is begins.startswith(("wrap", "coat"))
