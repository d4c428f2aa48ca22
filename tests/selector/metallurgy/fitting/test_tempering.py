import tomllib
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from selector.metallurgy.fitting.reading import Readings, readings
from selector.metallurgy.fitting.tempering import (
    as_toml,
    fit,
    left_out_hrc,
    mean_error_hrc,
    residual_hrc,
    tempering_toml,
)
from selector.metallurgy.temper_curve import ELEMENTS, coefficients
from selector.metallurgy.tempering import tempered_hardness

PUBLISHED = Path(__file__).parents[3] / "published"


@pytest.fixture(scope="module")
def hundred():
    """A hundred readings of 24 steels, chosen by rule in tests/published."""
    grange, hollomon = (
        readings((PUBLISHED / name).read_text(encoding="utf-8").splitlines())
        for name in ("grange1956_tempering.csv", "hollomon1945_tempering.csv")
    )
    composition_wt_pct = {
        element: np.concatenate([values, hollomon.composition_wt_pct[element]])
        for element, values in grange.composition_wt_pct.items()
    }
    columns = {
        name: np.concatenate([getattr(grange, name), getattr(hollomon, name)])
        for name in ("source", "steel", "temperature_c", "time_s", "hrc")
    }
    return Readings(composition_wt_pct=composition_wt_pct, **columns)


def test_steels_left_out_are_predicted_to_the_aim(hundred):
    said = []
    left_out = left_out_hrc(hundred, "steel", lambda *step: said.append(step))
    residual = left_out[hundred.hrc >= 20.0]
    assert residual.size == 99
    assert mean_error_hrc(hundred, left_out) == np.abs(residual).mean() <= 1.3
    assert abs(residual.mean()) <= 0.5
    assert [share for _, share in said] == pytest.approx(np.arange(24) / 24)


def test_error_interval_holds_steels_left_out(hundred):
    residual = left_out_hrc(hundred, "steel")
    sd = tempered_hardness(
        hundred.composition_wt_pct, hundred.temperature_c, hundred.time_s
    ).sd_hrc
    for source in np.unique(hundred.source):
        chosen = hundred.source == source
        assert np.mean(np.abs(residual[chosen]) <= 1.645 * sd[chosen]) >= 0.8


def test_a_laboratory_left_out_is_predicted_by_the_other_alone(hundred):
    left_out = left_out_hrc(hundred, "source")
    first, second = np.unique(hundred.source)
    out = hundred.source == first
    by_the_other = fit(hundred.where(hundred.source == second))
    assert left_out[out] == pytest.approx(residual_hrc(hundred.where(out), by_the_other))


def test_error_interval_holds_most_of_a_laboratory_left_out(hundred):
    left_out = left_out_hrc(hundred, "source")
    sd = tempered_hardness(
        hundred.composition_wt_pct, hundred.temperature_c, hundred.time_s
    ).sd_hrc
    assert np.mean(np.abs(left_out) <= 1.645 * sd) >= 0.8


def test_fit_keeps_published_increments_and_finds_multipliers_near_one(hundred):
    fitted = fit(hundred)
    assert set(fitted.multiplier) == set(ELEMENTS)
    assert all(0.4 < value < 1.4 for value in fitted.multiplier.values())
    assert fitted.published_hv_per_wt_pct is coefficients().published_hv_per_wt_pct


def test_nothing_near_the_fit_is_closer_to_its_readings(hundred):
    fitted = fit(hundred)
    harder = replace(fitted, base_hv=fitted.base_hv + 10.0)
    softer = replace(fitted, base_hv=fitted.base_hv - 10.0)
    best, *rest = (
        np.square(residual_hrc(hundred, by)[hundred.hrc >= 20.0]).sum()
        for by in (fitted, harder, softer)
    )
    assert best < min(rest)


def test_fit_finds_the_curves_that_made_the_readings(hundred):
    made = replace(hundred, hrc=hundred.hrc + residual_hrc(hundred, coefficients()))
    before = np.abs(residual_hrc(hundred, fit(hundred))).mean()
    after = np.abs(residual_hrc(made, fit(made))).mean()
    assert after < 0.5 * before


def test_written_tables_are_those_shipped():
    shipped = coefficients()
    table = tomllib.loads(as_toml(shipped))
    assert table["martensite"]["base_hv"] == pytest.approx(shipped.base_hv)
    assert table["martensite"]["carbon_hv_per_wt_pct"] == pytest.approx(
        shipped.carbon_hv_per_wt_pct
    )
    assert table["multiplier"] == pytest.approx(shipped.multiplier)
    toml = Path(fit.__code__.co_filename).parent.with_name("tempering.toml")
    assert as_toml(shipped) in toml.read_text(encoding="utf-8")


def test_written_file_says_what_it_was_fitted_to_and_reads_back(hundred):
    text = tempering_toml(hundred)
    data = tomllib.loads(text)
    fitted = fit(hundred)
    assert data["form"]["node_k"] == pytest.approx(fitted.node_k)
    assert data["martensite"]["base_hv"] == pytest.approx(fitted.base_hv, abs=0.05)
    assert data["multiplier"] == pytest.approx(fitted.multiplier, abs=0.0005)
    assert "100 readings of 24 steels" in text
    assert "#   80 of Grange" in text


def test_a_source_of_many_lines_stays_in_its_comment(hundred):
    wild = replace(hundred, source=np.full(hundred.hrc.size, 'A paper\n[form] = "x"'))
    assert tomllib.loads(tempering_toml(wild))["multiplier"]["Mn"] > 0.0


def test_error_without_a_reading_on_the_scale_is_that_of_all(hundred):
    soft = hundred.where(hundred.hrc < 20.0)
    assert mean_error_hrc(soft, np.full(soft.hrc.size, -2.0)) == 2.0
