"""Critical temperatures beside cards and a handbook: Ac1, Ac3 and Ms of published checks."""

from selector.metallurgy.transformation import critical_temperatures
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.benchmarks.calibration_tempering import QUANTILES
from tests.published import test_asm1991_critical_temperatures as asm
from tests.published import test_grange1946_martensite_start as grange
from tests.published import test_lucefin2006_critical_temperatures as lucefin


def _reading(composition, line, printed, laboratory, fitted):
    lines = critical_temperatures(composition)
    ends = float(getattr(lines, line)) + float(getattr(lines, f"sd_{line}")) * QUANTILES
    name = line.removesuffix("_c").capitalize()
    return CalibrationReading(
        f"critical temperature, {name}", "°C", float(printed), *map(float, ends), fitted,
        {"laboratory": laboratory},
    )  # fmt: skip


def readings():
    """Return every printed critical temperature beside the forecast."""
    found = []
    for composition, ac1, ac3 in asm.TABLE.values():
        found.append(_reading(composition, "ac1_c", ac1, "ASM 1991", False))
        found.append(_reading(composition, "ac3_c", ac3, "ASM 1991", False))
    found += [
        _reading(composition, line, printed, "Lucefin", False)
        for composition, line, printed in lucefin.CARDS.values()
        if line != "mf_c"
    ]
    # Two coefficients of Ms were fitted with these among others.
    found += [
        _reading(composition, "ms_c", printed, "Grange and Stewart 1946", True)
        for composition, printed in (grange.TABLE | grange.MISSED).values()
    ]
    return found
