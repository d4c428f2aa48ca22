"""Tempering by composition beside readings: a steel left out of the fit, then a laboratory.

Fitted to the readings of a file that the environment variable TEMPERING_READINGS names (columns
as `temperwright fit` takes them, and `as_quenched_hrc` where it was measured), else to the
hundred of the published checks; forecast are those left out. The handbook's table at two hours
is forecast by the shipped coefficients, which have not seen it.
"""

import csv
import os
from contextlib import ExitStack
from pathlib import Path
from unittest.mock import patch

import numpy as np

from selector.metallurgy import temper_curve, tempering
from selector.metallurgy.fitting.reading import readings as read
from selector.metallurgy.fitting.tempering import fit
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.published import test_asm1991_tempering as asm

PUBLISHED = Path(__file__).parents[1] / "published"
OURS = ("grange1956_tempering.csv", "hollomon1945_tempering.csv")
QUANTILES = np.array([-1.6449, -0.6745, 0.0, 0.6745, 1.6449])


def _lines(path):
    return Path(path).read_text(encoding="utf-8-sig").splitlines()


def tables():
    """Return the readings by file, with the hardness as quenched where it was measured."""
    given = os.environ.get("TEMPERING_READINGS")
    for path in [given] if given else [PUBLISHED / name for name in OURS]:
        lines = _lines(path)
        rows = csv.DictReader(lines)
        fresh = np.array([float(row.get("as_quenched_hrc") or "nan") for row in rows])
        yield read(lines), fresh


def joined():
    """Return all readings as one table."""
    pairs = list(tables())
    first = pairs[0][0]
    columns = {
        name: np.concatenate([getattr(table, name) for table, _ in pairs])
        for name in ("source", "steel", "temperature_c", "time_s", "hrc")
    }
    composition = {
        element: np.concatenate([table.composition_wt_pct[element] for table, _ in pairs])
        for element in first.composition_wt_pct
    }
    fresh = np.concatenate([fresh for _, fresh in pairs])
    return type(first)(composition_wt_pct=composition, **columns), fresh


def steel_class(composition):
    """Return the class of a steel by its alloying elements. [wt %]"""
    if composition["Si"] > 1.2:
        return "silicon"
    if composition["Mo"] > 0.1 or composition["V"] > 0.1:
        return "molybdenum or vanadium"
    alloyed = composition["Cr"] + composition["Ni"] > 0.4 or composition["Mn"] > 1.2
    return "manganese, nickel or chromium" if alloyed else "carbon"


def band(value, edges, unit):
    """Return the span that a value falls in, in words that sort by size."""
    k = int(np.searchsorted(edges, value, side="right"))
    low = f"from {edges[k - 1]:6g}" if k else "up"
    return f"{k} {low}" + (f" to {edges[k]:g} {unit}" if k < len(edges) else f" {unit} up")


def groups(table, k):
    """Return the groups that a reading is counted in."""
    composition = {e: values[k] for e, values in table.composition_wt_pct.items()}
    return {
        "laboratory": str(table.source[k]),
        "class": steel_class(composition),
        "temperature": band(table.temperature_c[k], (180, 280, 380, 480, 580), "°C"),
        "time": band(table.time_s[k], (60, 1000, 4000, 20000), "s"),
        "steel": str(table.steel[k]),
    }


def forecast_by(fitted, some, fresh):
    """Return the forecast of readings by coefficients other than the shipped ones."""
    with ExitStack() as stack:
        for room in (temper_curve, tempering):
            stack.enter_context(patch.object(room, "coefficients", lambda: fitted))
        return tempering.tempered_hardness(
            some.composition_wt_pct, some.temperature_c, some.time_s, fresh
        )


def left_out(table, fresh, group, model):
    """Return the forecast of each reading, its whole group left out of the fit."""
    found = []
    for name in np.unique(group):
        out = group == name
        fitted = fit(table.where(~out))
        some = table.where(out)
        forecast = forecast_by(fitted, some, fresh[out])
        ends = forecast.hrc[:, None] + forecast.sd_hrc[:, None] * QUANTILES
        found += [
            CalibrationReading(
                model, "HRC", float(some.hrc[k]), *map(float, ends[k]), False, groups(some, k)
            )
            for k in range(some.hrc.size)
        ]
    return found


def handbook():
    """Return the handbook's table at two hours, by the shipped coefficients."""
    found = []
    for steel, text in asm.PRINTED_HRC.items():
        printed = [float(word) for word in text.split()]
        residual, sd = asm.residual_and_sd_hrc(steel)
        for k, hrc in enumerate(printed):
            ends = hrc + residual[k] + sd[k] * QUANTILES
            group = {
                "laboratory": "ASM 1991",
                "class": steel_class(
                    {"Mo": 0.0, "V": 0.0, "Cr": 0.0, "Ni": 0.0} | asm.COMPOSITION_WT_PCT[steel]
                ),
                "temperature": f"{asm.TEMPERATURE_C[k]:g} °C",
                "steel": steel,
            }
            found.append(
                CalibrationReading(
                    "tempering, a handbook's table", "HRC", hrc, *map(float, ends), False, group
                )
            )
    return found


def readings():
    """Return steels left out, laboratories left out, and the handbook."""
    table, fresh = joined()
    return [
        *left_out(table, fresh, table.steel, "tempering, steel left out"),
        *left_out(table, fresh, table.source, "tempering, laboratory left out"),
        *handbook(),
    ]
