"""J. H. Hollomon and L. D. Jaffe, Time-temperature relations in tempering steel, Transactions
of the American Institute of Mining and Metallurgical Engineers 162, 1945, 223-249.

Four plain carbon steels after 900 s at 200 to 600 °C, chosen by that rule and not by how well
they fit, with their as-quenched hardness: hollomon1945_tempering.csv, as printed.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from selector.metallurgy.fitting.reading import readings
from selector.metallurgy.tempering import tempered_hardness

LINES = (
    Path(__file__)
    .with_name("hollomon1945_tempering.csv")
    .read_text(encoding="utf-8")
    .splitlines()
)
READINGS = readings(LINES)
AS_QUENCHED_HRC = np.array([float(row["as_quenched_hrc"]) for row in csv.DictReader(LINES)])


def residual_and_sd_hrc(as_quenched_hrc):
    predicted = tempered_hardness(
        READINGS.composition_wt_pct, READINGS.temperature_c, READINGS.time_s, as_quenched_hrc
    )
    return predicted.hrc - READINGS.hrc, predicted.sd_hrc


@pytest.mark.parametrize("steel", np.unique(READINGS.steel))
def test_steel_after_a_quarter_hour_at_five_temperatures(steel):
    residual, sd = residual_and_sd_hrc(AS_QUENCHED_HRC)
    chosen = READINGS.steel == steel
    assert np.abs(residual[chosen]).mean() < sd[chosen].mean()


def test_as_quenched_hardness_helps_and_is_not_needed():
    measured, _ = residual_and_sd_hrc(AS_QUENCHED_HRC)
    alone, _ = residual_and_sd_hrc(None)
    assert measured.size == 20
    assert np.abs(measured).mean() <= 1.3
    assert np.abs(measured).mean() < np.abs(alone).mean() <= 1.5
