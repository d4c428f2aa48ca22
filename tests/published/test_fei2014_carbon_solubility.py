"""Y. Fei and E. Brosh, Experimental study and thermodynamic calculations of phase relations
in the Fe-C system at high pressure, Earth and Planetary Science Letters 408, 2014, 155-162.

The lines of plain Fe-C at 1 bar, from the published database as shipped with pycalphad
(cfe_broshe.tdb): carbon in austenite beside cementite (Ac_m) and beside ferrite (A3). The
values quoted as printed were evaluated once; the database itself is asked as well. The parabola
of the model claims 0.01 %. Ac3 is held to the model's stated error, since it stands for heating
in a furnace, not for equilibrium.
"""

from pathlib import Path

import numpy as np
import pytest

from selector.metallurgy.transformation import (
    carbon_solubility,
    critical_temperatures,
    eutectoid_carbon,
)
from tests.printed import agrees

IRON_G, CARBON_G = 55.845, 12.011


@pytest.fixture(scope="module")
def carbon_beside():
    """Return the function that asks the database for carbon in austenite. [wt %]."""
    # Three seconds to load, which those who run none of this need not wait.
    import pycalphad  # noqa: PLC0415
    from pycalphad import Database, equilibrium, variables  # noqa: PLC0415

    folder = Path(pycalphad.__file__).parent / "tests" / "databases"
    database = Database(str(folder / "cfe_broshe.tdb"))

    def carbon_wt_pct(phase, temperatures_c, inside):
        state = equilibrium(
            database,
            ["FE", "C", "VA"],
            ["FCC_A1", phase],
            {
                variables.T: np.asarray(temperatures_c) + 273.15,
                variables.P: 101325.0,
                variables.N: 1.0,
                variables.X("C"): inside,
            },
        )
        names = state.Phase.values.squeeze()
        assert all({"FCC_A1", phase} <= set(row) for row in names.tolist())
        at_c = state.X.sel(component="C").values.squeeze()
        x = np.where(names == "FCC_A1", at_c, 0.0).sum(axis=-1)
        return 100.0 * x * CARBON_G / (x * CARBON_G + (1.0 - x) * IRON_G)

    return carbon_wt_pct


@pytest.mark.parametrize(
    ("temperature_c", "printed"),
    [
        (740, "0.795"),
        (780, "0.896"),
        (820, "1.002"),
        (850, "1.084"),
        (900, "1.227"),
        (1000, "1.535"),
    ],
    ids=lambda v: f"{v} °C" if isinstance(v, int) else None,
)
def test_solubility_beside_cementite(temperature_c, printed):
    assert agrees(float(carbon_solubility({}, float(temperature_c))), printed, scatter=0.01)


def test_solubility_line_of_the_database_itself(carbon_beside):
    temperatures_c = np.array([740.0, 780.0, 820.0, 860.0, 900.0, 950.0])
    published = carbon_beside("CEMENTITE_D011", temperatures_c, inside=0.15)
    assert carbon_solubility({}, temperatures_c) == pytest.approx(published, abs=0.01)


def test_accm_is_the_solubility_line_of_the_database(carbon_beside):
    temperatures_c = np.array([760.0, 800.0, 850.0, 900.0])
    carbon = carbon_beside("CEMENTITE_D011", temperatures_c, inside=0.15)
    assert critical_temperatures({"C": carbon}).accm_c == pytest.approx(temperatures_c, abs=4.0)


def test_ac3_follows_the_ferrite_line_of_the_database(carbon_beside):
    temperatures_c = np.array([740.0, 760.0, 780.0, 800.0, 820.0, 840.0, 860.0])
    carbon = carbon_beside("BCC_A2", temperatures_c, inside=0.004)
    lines = critical_temperatures({"C": carbon})
    departure_c = lines.ac3_c - temperatures_c
    assert np.abs(departure_c).max() <= lines.sd_ac3_c.max()
    assert np.abs(departure_c).mean() <= 8.0


def test_eutectoid_is_where_the_lines_of_the_database_cross(carbon_beside):
    temperatures_c = np.array([729.0, 733.0, 740.0])
    beside_ferrite = carbon_beside("BCC_A2", temperatures_c, inside=0.004)
    beside_cementite = carbon_beside("CEMENTITE_D011", temperatures_c, inside=0.15)
    gap = np.polyfit(temperatures_c, beside_cementite - beside_ferrite, 1)
    eutectoid_c = -gap[1] / gap[0]
    eutectoid = np.polyval(np.polyfit(temperatures_c, beside_cementite, 1), eutectoid_c)
    assert float(eutectoid_carbon({})) == pytest.approx(eutectoid, abs=0.01)
    assert float(critical_temperatures({"C": 0.7}).ac1_c) == pytest.approx(
        eutectoid_c, abs=10.0
    )
