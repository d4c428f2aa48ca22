"""The calibration report counts as it says, and prints the table that stands beside it."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from selector.metallurgy.temper_curve import coefficients
from tests.benchmarks.calibration import factor, gathered, markdown, report, summary, topics
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.benchmarks.calibration_tempering import forecast_by, joined

TABLE = Path(__file__).parent / "benchmarks" / "calibration.md"
# Topics that are quick, and read nothing that a contributor may not have.
QUICK = ("critical", "curves", "end_quench")


def reading(measured, *, fitted=False, laboratory="A"):
    """Return a reading of a forecast of 50 with 47 to 53 and 49 to 51 about it."""
    ends = (47.0, 49.0, 50.0, 51.0, 53.0)
    return CalibrationReading("m", "HRC", measured, *ends, fitted, {"laboratory": laboratory})


@pytest.fixture(scope="module")
def quick():
    return gathered(topics(QUICK))


def test_a_summary_counts_bias_error_and_what_is_inside():
    count, bias, error, half, most = summary([reading(m) for m in (50.5, 48.0, 54.0, 50.0)])
    assert count == 4
    assert bias == pytest.approx((-0.5 + 2.0 - 4.0 + 0.0) / 4)
    assert error == pytest.approx(6.5 / 4)
    assert (half, most) == (0.5, 0.75)


def test_depths_are_missed_by_a_factor_to_either_side_and_hardness_by_none():
    twice = [replace(reading(m), unit="mm") for m in (25.0, 100.0)]
    assert factor(twice) == pytest.approx(2.0)
    assert factor([reading(25.0)]) is None


def test_a_report_names_what_was_fitted_on_and_splits_by_group():
    some = [reading(50.0, fitted=True), reading(55.0, laboratory="B")]
    text = "\n".join(report({("m", "HRC"): some}))
    assert "m, HRC (1 seen in a fit: A)" in text
    assert "by laboratory" in text
    assert text.count("100%") == 2


def test_every_topic_is_found_and_no_other_module():
    assert {*QUICK, "tempering"} <= set(topics())
    assert "reading" not in topics()


def test_quantiles_rise_and_groups_are_named(quick):
    for readings in quick.values():
        for one in readings:
            ends = [one.p05, one.p25, one.p50, one.p75, one.p95]
            assert ends == sorted(ends)
            assert one.group["steel" if one.model == "end-quench midline" else "laboratory"]


def test_published_curves_meet_other_producers(quick):
    _, _, error, _, most = summary(quick["tempering, published curves", "HRC"])
    assert error <= 1.5
    assert 0.85 <= most <= 0.96


def test_the_table_of_the_guide_is_the_one_printed(quick):
    guide = TABLE.read_text(encoding="utf-8").splitlines()
    rows = list(markdown(quick))[2:]
    assert [row for row in rows if row not in guide] == []


def test_tempering_is_forecast_by_the_coefficients_of_the_fit_at_hand():
    table, fresh = joined()
    shipped = coefficients()
    harder = replace(shipped, base_hv=shipped.base_hv + 20.0)
    own, other = (forecast_by(by, table, fresh).hv for by in (shipped, harder))
    assert np.mean(other - own) > 5.0
