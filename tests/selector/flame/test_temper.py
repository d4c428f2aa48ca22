import pytest

from catalog import load_catalog
from selector.flame.case import heated_for
from selector.flame.outcome import Setup
from selector.flame.temper import LEAST_DRAW_C, chosen_temper
from selector.hardening.stock import stock_of
from selector.job.job import resolved
from selector.torch.flame_history import quench
from selector.torch.hardness_map import harden
from tests.dog import asked, work

CATALOG = load_catalog()
LEAST = {"zone.0.hardness": {"min": "50 HRC"}}


def chosen(changes=None, steel="42crmo4", heat=("oxy-propane", "kitchen-oven")):
    heats = [{"source": source} for source in heat]
    job = resolved(asked({"workshop.heat": heats, **(changes or {})}), CATALOG, count=1)
    treatment = work(steel, "local-torch", "oil", "oxy-propane")
    torching, part, (heated, grid) = heated_for(treatment, job, Setup(past_mm=12.5))
    hardened = harden(quench(torching, heated, grid), stock_of(treatment), torching.bath)
    return chosen_temper(treatment, job, hardened, job.leading, part.zone_mm)


def test_an_oven_inside_the_window_goes_before_a_flame_nearer_to_its_middle():
    """Common practice, no source: an oven draws evenly, a flame by the eye in minutes."""
    assert chosen(LEAST).means == "oven"


def test_a_flame_draws_where_the_oven_stays_above_the_window():
    soft = {"zone.0.hardness": {"min": "52 HRC", "max": "55 HRC"}}
    assert chosen(soft, "100mncrw4").means == "torch"


def test_without_an_oven_the_flame_draws():
    assert chosen(LEAST, heat=("oxy-propane",)).means == "torch"


@pytest.mark.parametrize("steel", ["42crmo4", "c45"])
def test_nothing_is_drawn_where_its_toughness_is_unknown(steel):
    assert chosen(steel=steel).temperature_c >= LEAST_DRAW_C
