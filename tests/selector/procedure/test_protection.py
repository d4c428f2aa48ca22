import pytest

from selector.procedure.heating import heating_steps
from selector.procedure.laid import set_up
from selector.procedure.lines import short_lines
from selector.procedure.protection import protection
from tests.procedure import KILN, doing


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
    ("treatment", "said"),
    [
        (("x153crmov12", "through-furnace", "air", KILN), "wrap it in stainless foil, heat to"),
        (("60wcrv8", "through-furnace", "oil", KILN), "coat it with anti-scale compound, "),
        (("100mncrw4", "through-furnace", "oil", KILN), "heat to"),
    ],
)
def test_what_is_counted_on_to_keep_the_skin_stands_first_in_the_short_procedure(
    treatment, said
):
    do = doing(*treatment)
    assert short_lines(heating_steps(do))[0].startswith(said)
