"""ASM Handbook, Volume 4, Heat Treating, ASM International, 1991, Tempering of Steel: typical
hardnesses of various carbon and alloy steels after tempering, 2 h (from memory; 1095 below
400 °C read on a copy by el-zet.pl).

Small sections fully hardened; nominal compositions of SAE J403 and J404. All sixteen steels.
No coefficient was fitted to this table; the width of the error interval was set with it in
view. Two laboratories differ by 2.7 HRC for 4140 and by 3.7 HRC for 4340; 2.7 HRC is the
scatter granted here.
"""

import numpy as np
import pytest

from selector.metallurgy.tempering import tempered_hardness
from tests.unexplained import marked

TEMPERATURE_C = np.array([205.0, 260.0, 315.0, 370.0, 425.0, 480.0, 540.0, 595.0, 650.0])
SCATTER_HRC = 2.7

COMPOSITION_WT_PCT = {
    "1030": {"C": 0.30, "Mn": 0.75, "Si": 0.22},
    "1060": {"C": 0.60, "Mn": 0.75, "Si": 0.22},
    "1080": {"C": 0.80, "Mn": 0.75, "Si": 0.22},
    "1095": {"C": 0.95, "Mn": 0.40, "Si": 0.22},
    "1141": {"C": 0.41, "Mn": 1.50, "Si": 0.22},
    "1144": {"C": 0.44, "Mn": 1.50, "Si": 0.22},
    "4130": {"C": 0.30, "Mn": 0.50, "Si": 0.25, "Cr": 0.95, "Mo": 0.20},
    "8740": {"C": 0.40, "Mn": 0.87, "Si": 0.25, "Ni": 0.55, "Cr": 0.50, "Mo": 0.25},
    "1040": {"C": 0.40, "Mn": 0.75, "Si": 0.22},
    "1050": {"C": 0.50, "Mn": 0.75, "Si": 0.22},
    "4140": {"C": 0.40, "Mn": 0.87, "Si": 0.25, "Cr": 0.95, "Mo": 0.20},
    "4150": {"C": 0.50, "Mn": 0.87, "Si": 0.25, "Cr": 0.95, "Mo": 0.20},
    "4340": {"C": 0.40, "Mn": 0.70, "Si": 0.25, "Ni": 1.82, "Cr": 0.80, "Mo": 0.25},
    "5150": {"C": 0.50, "Mn": 0.80, "Si": 0.25, "Cr": 0.80},
    "6150": {"C": 0.50, "Mn": 0.80, "Si": 0.25, "Cr": 0.95, "V": 0.17},
    "8650": {"C": 0.50, "Mn": 0.87, "Si": 0.25, "Ni": 0.55, "Cr": 0.50, "Mo": 0.20},
}
PRINTED_HRC = {
    "1030": "50 45 43 39 31 28 25 22",
    "1060": "56 55 50 42 38 37 35 33 26",
    "1080": "57 55 50 43 41 40 39 38 32",
    "1141": "49 46 43 41 38 34 28 23",
    "1144": "55 50 47 45 39 32 29 25",
    "4130": "47 45 43 42 38 34 32 26 22",
    "8740": "57 53 50 47 44 41 38 35 22",
    "1095": "58 57 52 47 43 42 41 40 33",
    "1040": "51 48 46 42 37 30 27 22",
    "1050": "52 50 46 44 40 37 31 29 22",
    "4140": "57 53 50 47 45 41 36 33 29",
    "4150": "56 55 53 51 47 46 43 39 35",
    "4340": "55 52 50 48 45 42 39 34 30",
    "5150": "57 55 52 49 45 39 34 31 28",
    "6150": "58 57 53 50 46 42 40 36 31",
    "8650": "55 54 52 49 45 41 37 32 28",
}


def residual_and_sd_hrc(steel):
    printed = np.array([float(text) for text in PRINTED_HRC[steel].split()])
    temperature_c = TEMPERATURE_C[: printed.size]
    predicted = tempered_hardness(COMPOSITION_WT_PCT[steel], temperature_c, 7200.0)
    return predicted.hrc - printed, predicted.sd_hrc


SHELF = (
    "The table has a shelf of 33 to 43 HRC from 370 to 650 °C that neither Grange and Baughman "
    "nor Hollomon and Jaffe found in steels of as much carbon; fine pearlite has it, in a bar "
    "not hard throughout. Of the miss at 205 °C retained austenite takes 1 to 2 HRC."
)
UNEXPLAINED = {
    "1060": SHELF,
    "1080": SHELF,
    "1095": SHELF,
    "1141": "The table has this steel 2 HRC softer than 1040, with twice the manganese.",
}


@pytest.mark.parametrize(
    "steel",
    marked(PRINTED_HRC, UNEXPLAINED),
)
def test_steel_agrees_within_the_scatter_between_laboratories(steel):
    residual, _ = residual_and_sd_hrc(steel)
    assert np.abs(residual).mean() <= SCATTER_HRC


def test_interval_holds_another_laboratory():
    pairs = [residual_and_sd_hrc(steel) for steel in PRINTED_HRC]
    residual, sd = (np.concatenate(column) for column in zip(*pairs, strict=True))
    assert np.mean(np.abs(residual) <= 1.645 * sd) >= 0.8
