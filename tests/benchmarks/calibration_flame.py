"""Flame-hardened ends: surface and depth beside what was forecast, for the calibration report.

Surfaces took part in no fit. Of the shells, silver steel and W1 set how a section limit is read
(half martensite at the centre); the heats of W-type steel in brine set nothing.
"""

from statistics import NormalDist

import numpy as np

from catalog import load_catalog
from selector.hardening.as_quenched import as_quenched
from selector.hardening.bath_response import POSITIONS, cooled
from selector.hardening.composition import sampled
from selector.hardening.kind import start
from selector.hardening.quenched_bar import CRITICAL_LOG_SD, LEVEL_SD_HRC, quenched_bar
from selector.heat.boiling import Bath, Quench
from selector.job.job import resolved
from selector.metallurgy.hardenability import heat_hardness
from selector.metallurgy.hardening_heat import Heat
from selector.option.preparation import prepare
from tests.benchmarks.calibration_bars import NORMAL
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.dog import asked, work
from tests.published.test_asm1991_flame_response import SKIN_MM
from tests.published.test_asm1991_flame_response import TABLE as RESPONSE
from tests.published.test_is5517_flame_hardened_surface import TABLE

# Steels of the published table that the catalogue has, and their bath at a bench.
SURFACES = {
    "C45": ("c45", "water"),
    "C55": ("c55", "water"),
    "50Cr1V23": ("51crv4", "oil"),
    "40Cr1": ("41cr4", "oil"),
    "40Cr1Mo28": ("42crmo4", "oil"),
}
SECTIONS_MM = (20.0, 30.0)
# Carbon of a grade of IS 1570 and IS 5517, either side of its middle (from memory). [wt %]
IS_CARBON_WT_PCT = 0.05
# Carbon that the grades of a row of the handbook may have: lowest and highest of SAE J403 and
# J404 (from memory). A bar of a row is any of them. [wt %]
ROW_CARBON_WT_PCT = {
    "1025 to 1035": (0.22, 0.38), "1040 to 1050": (0.37, 0.55), "1055 to 1075": (0.50, 0.80),
    "1125 to 1137": (0.22, 0.39), "1138 to 1144": (0.34, 0.48), "1146 to 1151": (0.42, 0.55),
    "1340 to 1345": (0.38, 0.48), "3140 to 3145": (0.38, 0.48), "4130 to 4135": (0.28, 0.38),
    "4140 to 4145": (0.38, 0.48), "4147 to 4150": (0.45, 0.53), "4337 to 4340": (0.35, 0.43),
    "4640": (0.38, 0.43), "6150": (0.48, 0.53), "8630 to 8640": (0.28, 0.43),
    "8642 to 8660": (0.40, 0.64),
}  # fmt: skip
# Shells in water, middle of the published range, common practice: to 55 HRC. [mm]
SHELLS = [
    ("115crv3", 18.0, 3.0),
    ("115crv3", 25.0, 3.0),
    ("c105u", 25.0, 3.0),
]
# Carbon, manganese, silicon, chromium; critical diameter in mm. G. Roberts, G. Krauss and R.
# Kennedy, Tool Steels, 5th ed., 1998, Table 7-3: brine, H = 5; half martensite at the centre.
BRINE = [
    (1.03, 0.28, 0.15, 0.04, 8.9),
    (1.07, 0.34, 0.22, 0.10, 11.4),
    (1.04, 0.29, 0.16, 0.15, 12.7),
    (1.00, 0.31, 0.28, 0.13, 15.2),
    (0.97, 0.46, 0.29, 0.17, 20.3),
    (0.98, 0.50, 0.37, 0.23, 22.9),
    (0.94, 0.45, 0.36, 0.21, 25.4),
]
HALF_HRC = 54.0
SHELL_ENDS_HRC = 55.0
# The diameter goes about with this power of the critical time. [-]
DIAMETER_POWER = 0.6


def readings() -> list[CalibrationReading]:
    """Return every reading with its forecast."""
    return [*_surfaces(), *_skins(), *_shells(), *_in_brine()]


def _surfaces():
    """Return skins as quenched at a heating nozzle."""
    catalog = load_catalog()
    for name, (slug, medium) in SURFACES.items():
        low, high = TABLE[name][1]
        for size_mm in SECTIONS_MM:
            sizes = {f"part.section.{n}.size": size_mm for n in (0, 1)}
            job = resolved(asked({**sizes, "part.section.0.length": 30.0}), catalog)
            ready = prepare(work(slug, "local-torch", medium, "oxy-propane"), job)
            yield CalibrationReading.of_samples(
                "flame-hardened surface",
                "HRC",
                0.5 * (low + high),
                ready.fresh.hrc[:, 0],
                fitted=False,
                group={"steel": name, "section": f"{size_mm:.0f} mm", "medium": medium},
            )


def _skins():
    """Return skins under a spray, by end-quench curve, of two books' grades."""
    rows = [
        (name, steel, span, ROW_CARBON_WT_PCT[name]) for name, (steel, span) in RESPONSE.items()
    ]
    for name, (steel, span) in TABLE.items():
        if name not in SURFACES:
            rows.append(
                (
                    name,
                    steel,
                    span,
                    (steel["C"] - IS_CARBON_WT_PCT, steel["C"] + IS_CARBON_WT_PCT),
                )
            )
    even, level = np.linspace(0.005, 0.995, 100), NormalDist()
    error = LEVEL_SD_HRC * np.array([level.inv_cdf(share) for share in even])
    for name, steel, (low, high), (poorest, richest) in rows:
        carbon = poorest + (richest - poorest) * even
        skins = [float(heat_hardness({**steel, "C": c}, SKIN_MM)) for c in carbon]
        yield CalibrationReading.of_samples(
            "flame-hardened surface",
            "HRC",
            0.5 * (low + high),
            np.add.outer(skins, error).ravel(),
            fitted=False,
            group={"steel": name, "section": "skin", "medium": "water"},
        )


def _shells():
    """Return how deep carbon tool steel is hard in water, over the samples."""
    catalog = load_catalog()
    job = resolved(asked(), catalog)
    for slug, size_mm, depth_mm in SHELLS:
        steel, normals = catalog.steels[slug], job.of_steel(slug)
        quench = Quench(Bath("water"), 1.0, 0.2, 1.0)
        points = cooled(np.array([size_mm]), quench, start(steel), normals)
        heat_c = steel.hardened.temperature_c.middle
        peak_c = np.full((1, 1), heat_c)
        heat = Heat(heat_c, peak_c, 1800.0, 0.2, "spheroidised", "water")
        hrc = as_quenched(steel, sampled(steel, normals), heat, points, normals).hrc
        inwards_mm = 0.5 * size_mm * (1.0 - np.array(POSITIONS))
        depth = [np.interp(-SHELL_ENDS_HRC, -row, inwards_mm) for row in hrc]
        yield CalibrationReading.of_samples(
            "hard shell",
            "mm",
            depth_mm,
            depth,
            fitted=True,
            group={"steel": slug, "section": f"{size_mm:.0f} mm", "medium": "water"},
        )


def _in_brine():
    """Return the bar that half hardens at its centre in brine."""
    for carbon, manganese, silicon, chromium, diameter_mm in BRINE:
        steel = {"C": carbon, "Mn": manganese, "Si": silicon, "Cr": chromium}
        tried_mm = np.geomspace(4.0, 60.0, 15)
        centre = [
            float(quenched_bar(steel, d, "brine", 790.0, agitation="violent").hrc[0])
            for d in tried_mm
        ]
        half_mm = np.exp(np.interp(-HALF_HRC, -np.array(centre), np.log(tried_mm)))
        points = half_mm * np.exp(DIAMETER_POWER * CRITICAL_LOG_SD * NORMAL)
        yield CalibrationReading(
            "half-hard bar in brine",
            "mm",
            diameter_mm,
            *map(float, points),
            fitted=False,
            group={"steel": f"{carbon} C {manganese} Mn {chromium} Cr", "medium": "brine"},
        )
