import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.critical_time import (
    ESTIMATED_SPREAD,
    LIMIT_SPREAD,
    critical_s,
    soaked,
)
from selector.hardening.quenched_bar import CRITICAL_LOG_SD, FURNACE_C_PER_S, SOAK_S
from selector.metallurgy.austenite import austenite

STEELS = load_catalog().steels


def state(steel):
    """Return the austenite of a soak at the middle of the steel's range."""
    heat_c = steel.hardened.temperature_c.middle
    return austenite(middle(steel), heat_c, SOAK_S, FURNACE_C_PER_S, "spheroidised")


def critical(steel, medium_class):
    """Return the time and the sd of its logarithm, at the middle of all that varies."""
    time_s, log_sd = critical_s(steel, state(steel), medium_class)
    return float(np.ravel(time_s)[0]), log_sd


def with_limit(slug, basis, **sizes_mm):
    """Return a steel with other section limits."""
    steel = STEELS[slug]
    known = next(iter(STEELS["100mncrw4"].hardened.section_limit_mm.values()))
    limits = {
        name: known.model_copy(update={"value": size, "basis": basis})
        for name, size in sizes_mm.items()
    }
    hardened = steel.hardened.model_copy(update={"section_limit_mm": limits})
    return steel.model_copy(update={"hardened": hardened})


def test_without_a_limit_the_analysis_speaks_alone():
    steel = with_limit("80crv2", "typical")
    assert critical(steel, "oil") == (
        pytest.approx(soaked(steel)[0], rel=0.02),
        pytest.approx(CRITICAL_LOG_SD),
    )


def test_a_published_limit_of_the_baths_class_speaks_alone():
    alone, both = (
        with_limit("80crv2", "typical", oil=9.0),
        with_limit("80crv2", "typical", oil=9.0, water=40.0),
    )
    assert critical(alone, "oil") == pytest.approx(critical(both, "oil"))
    assert critical(alone, "oil")[1] == LIMIT_SPREAD


@pytest.mark.parametrize("size_mm", [4.0, 9.0, 40.0])
def test_an_estimated_limit_moves_the_analysis_a_little(size_mm):
    """Of the way to what the limit says, a fifth."""
    by_analysis = critical(with_limit("80crv2", "typical"), "oil")[0]
    by_limit = critical(with_limit("80crv2", "typical", oil=size_mm), "oil")[0]
    time_s, log_sd = critical(with_limit("80crv2", "estimated", oil=size_mm), "oil")
    way = np.log(time_s / by_analysis) / np.log(by_limit / by_analysis)
    assert 0.15 < way < 0.25
    assert log_sd < CRITICAL_LOG_SD < ESTIMATED_SPREAD


def test_a_limit_of_another_bath_counts_beside_the_analysis():
    time_s, log_sd = critical(with_limit("80crv2", "typical", water=16.0), "oil")
    by_analysis = critical(with_limit("80crv2", "typical"), "oil")[0]
    by_limit = critical(with_limit("80crv2", "typical", water=16.0), "water")[0]
    assert by_limit < time_s < by_analysis
    assert LIMIT_SPREAD < log_sd < CRITICAL_LOG_SD


@pytest.mark.parametrize("basis", ["typical", "estimated"])
def test_of_high_alloy_steel_the_limits_stand_alone(basis):
    thin, thick = (
        critical(with_limit("x153crmov12", basis, air=size), "air") for size in (50.0, 100.0)
    )
    assert thick[0] > 1.5 * thin[0]
    assert thin[1] == thick[1] == LIMIT_SPREAD


def test_no_heat_at_all_hardens_in_no_time():
    steel = STEELS["115crv3"]
    cold = austenite(middle(steel), 600.0, SOAK_S, FURNACE_C_PER_S, "spheroidised")
    assert float(np.ravel(critical_s(steel, cold, "water")[0])[0]) > 0.0
