import tomllib

import numpy as np
import pytest

from selector.errors import SelectorError
from selector.metallurgy.band_curve import coefficients
from selector.metallurgy.fitting.hardenability import (
    POWER,
    SHAPE,
    bands,
    fit_bands,
    hardenability_toml,
    leave_one_grade_out_hrc,
    miss_hrc,
)
from selector.metallurgy.hardenability import PRESUMED_WT_PCT, jominy_curve

HEADING = "grade,distance_mm,hrc_min,hrc_max,c_wt,mn_wt,si_wt,ni_wt,cr_wt,mo_wt"
STEELS = {
    "carbon": (0.45, 0.65, 0.25, "", "", ""),
    "manganese": (0.40, 1.4, 0.25, "", "", ""),
    "chromium": (0.41, 0.75, 0.25, "", 1.05, ""),
    "chromoly": (0.41, 0.75, 0.25, "", 1.05, 0.22),
    "case": (0.17, 1.15, 0.25, "", 0.95, ""),
    "nickel": (0.34, 0.65, 0.25, 1.5, 1.5, 0.22),
    "triple": (0.20, 0.8, 0.25, 0.55, 0.5, 0.2),
}


def band_lines(shift_hrc=0.0):
    """Return bands 8 HRC wide about the shipped curve, moved."""
    lines = [HEADING]
    for grade, contents in STEELS.items():
        steel = {
            element: float(content)
            for element, content in zip(
                ("C", "Mn", "Si", "Ni", "Cr", "Mo"), contents, strict=True
            )
            if content
        }
        steel = PRESUMED_WT_PCT | steel
        for x in (1.5, 5.0, 9.0, 15.0, 30.0, 50.0):
            hrc = float(jominy_curve(steel, x).hrc) + shift_hrc
            cells = (grade, x, hrc - 4.0, hrc + 4.0, *contents)
            lines.append(",".join(map(str, cells)))
    return lines


@pytest.fixture(scope="module")
def given():
    return bands(band_lines())


def test_bands_are_read_with_unnamed_elements_as_they_are_fitted(given):
    assert given.grade.size == 42
    assert given.composition_wt_pct["Cu"] == pytest.approx(np.full(42, 0.15))
    assert given.composition_wt_pct["Cr"][0] == pytest.approx(0.075)
    assert given.composition_wt_pct["V"].tolist() == [0.0] * 42
    assert given.middle_hrc[0] == pytest.approx(given.low_hrc[0] + 4.0)


def test_shipped_coefficients_made_these_bands(given):
    assert miss_hrc(given, coefficients()) == pytest.approx(0.0, abs=1e-9)


def many(given):
    """Return the same points forty times, so that they outweigh the priors."""
    return given.where(np.tile(np.arange(given.grade.size), 40))


def test_the_fit_finds_the_curves_that_made_the_bands(given):
    fitted = fit_bands(many(given))
    assert set(fitted.power) == {*POWER, "B"}
    assert set(fitted.shape) == set(SHAPE)
    assert np.abs(miss_hrc(given, fitted)).mean() < 0.3


def test_the_fit_follows_harder_bands():
    harder = bands(band_lines(3.0))
    assert miss_hrc(harder, coefficients()) == pytest.approx(-3.0)
    assert np.abs(miss_hrc(harder, fit_bands(many(harder)))).mean() < 0.6


def test_a_grade_is_foretold_by_the_others_alone_and_progress_is_said(given):
    said = []
    some = given.where(np.isin(given.grade, ["carbon", "chromium", "nickel"]))
    left_out = leave_one_grade_out_hrc(some, lambda *step: said.append(step))
    nickel = some.grade == "nickel"
    alone = miss_hrc(some.where(nickel), fit_bands(some.where(~nickel)))
    assert left_out[nickel] == pytest.approx(alone)
    assert np.abs(alone).mean() > np.abs(miss_hrc(some, fit_bands(some))[nickel]).mean()
    assert [share for _, share in said] == pytest.approx([0.0, 1 / 3, 2 / 3])


def test_written_tables_have_the_keys_of_the_shipped_file(given):
    data = tomllib.loads(hardenability_toml(given))
    shipped = coefficients()
    assert list(data["power"]) == list(shipped.power)
    assert list(data["shape"]) == list(shipped.shape)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ([HEADING], r"grades must be two or more; got 0"),
        (band_lines()[:3], r"grades must be two or more; got 1"),
        ([HEADING, "X,0.5,40,50,0.4,,,,,"], r"line 2, distance_mm .* got '0.5'"),
        (
            ["grade,distance_mm"],
            r"line 1 must be a heading with hrc_min, hrc_max, c_wt as well",
        ),
    ],
    ids=["none", "one", "near", "columns"],
)
def test_bands_that_cannot_be_fitted_are_refused(lines, said):
    with pytest.raises(SelectorError, match=said):
        bands(lines)
