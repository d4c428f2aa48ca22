import numpy as np
import pytest

from selector.hardening.heating_course import REFERENCE_C
from selector.hardening.stock import (
    bought_hrc,
    is_temper_known,
    rest_hv,
    stock_of,
    supply_hrc,
)
from selector.hardness_scale import hrc_from_hb, hrc_from_hv, hv_from_hrc
from selector.metallurgy.tempering import equivalent_time
from tests.dog import work

SECONDS = np.geomspace(1e-6, 1e6, 25)


def bar(steel, condition=None):
    done = work(steel, "local-torch", "oil", "oxy-propane", condition)
    return stock_of(done.steel, done.condition)


@pytest.mark.parametrize(
    ("steel", "condition"), [("42crmo4", "prehard"), ("c45", "cold-drawn")]
)
def test_what_was_hardened_or_worked_softens_with_time_at_heat(steel, condition):
    stock = bar(steel, condition)
    found = rest_hv(SECONDS, stock)
    assert found[0] == pytest.approx(hv_from_hrc(stock.supply_hrc, outside="extend"), rel=1e-3)
    assert (np.diff(found) <= 1e-9).all()
    assert found[-1] < 0.9 * found[0]


def test_soft_bar_stays_as_it_is():
    assert np.ptp(rest_hv(SECONDS, bar("42crmo4", "annealed"))) == 0.0


def test_a_prehard_bar_bears_an_hour_at_three_hundred():
    """Equal to far less than its own temper: common practice."""
    stock = bar("42crmo4", "prehard")
    spent = rest_hv(np.array([1e-6, 1e-3]), stock)
    assert hrc_from_hv(spent[1], outside="extend") > hrc_from_hv(spent[0]) - 0.5


@pytest.mark.parametrize("steel", ["42crmo4", "41cr4", "4340", "40crmnmo7"])
def test_bar_of_28_to_34_hrc_softens_some_hrc_beside_a_flame(steel):
    """Common practice: a few HRC where it passed 10 s or a minute just below its Ac1."""
    stock = bar(steel, "prehard")
    passed_s = equivalent_time([[740.0, 740.0]] * 2, [[0.0, 10.0], [0.0, 60.0]], REFERENCE_C)
    brief, long = stock.supply_hrc - hrc_from_hv(rest_hv(passed_s, stock), outside="extend")
    assert 0.8 < brief < long < 6.0
    assert not is_temper_known(stock)


def test_the_temper_of_hard_strip_goes_with_its_hardness():
    assert is_temper_known(bar("c75s", "prehard"))
    assert is_temper_known(bar("c45", "cold-drawn"))


def test_a_drawn_bar_knows_how_soft_it_gets():
    stock = bar("c45", "cold-drawn")
    assert stock.softest_hrc < stock.supply_hrc


def test_rich_soft_bar_is_spheroidised():
    assert bar("115crv3").structure == "spheroidised"
    assert bar("42crmo4", "prehard").structure == "quenched and tempered"


def supply(job, steel, condition):
    treatment = work(steel, "as-bought", None, None, condition)
    return supply_hrc(treatment.condition, job.of_steel(steel)), treatment.condition


def test_bar_as_sold_lies_about_its_published_range(job):
    hrc, condition = supply(job, "42crmo4", "prehard")
    span = condition.hardness_hrc
    assert np.median(hrc) == pytest.approx(span.middle, abs=0.1)
    assert np.mean((hrc >= span.low) & (hrc <= span.high)) > 0.9


def test_bar_with_a_maximum_alone_comes_softer_than_it(job):
    hrc, condition = supply(job, "42crmo4", "annealed")
    assert condition.hardness_hb.min is None
    most = float(hrc_from_hb(condition.hardness_hb.high, outside="extend"))
    assert np.median(hrc) < most
    assert np.mean(hrc <= most) > 0.9


def test_bar_of_no_known_hardness_is_not_guessed(job):
    hrc, _ = supply(job, "unknown", "unknown")
    assert np.isnan(hrc).all()


def test_a_bar_as_bought_is_the_middle_of_its_samples(job):
    hrc, condition = supply(job, "42crmo4", "prehard")
    assert bought_hrc(condition) == pytest.approx(np.median(hrc), abs=0.1)
