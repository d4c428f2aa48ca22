"""A temper in words: how hot, by what, how long, which band serves, what colour it shows."""

from selector.record import TemperOut


def temper_words(found: TemperOut) -> str:
    """Return a temper for the reader.

    Parameters
    ----------
    found : TemperOut
        The temper of an option.

    Returns
    -------
    str
        For instance "250 °C, torch, 5 min (200 to 250 °C serves); shows brown".
    """
    if found.temperature_c is None:
        return "none"
    text = f"{found.temperature_c:.0f} °C, {found.means}"
    if found.time_min is not None and found.means != "residual":
        text += f", {found.time_min:.0f} min" + (f" × {found.cycles}" * (found.cycles > 1))
    if found.band_c and found.band_c[0] < found.band_c[1]:
        text += f" ({found.band_c[0]:.0f} to {found.band_c[1]:.0f} °C serves)"
    return text + (f"; shows {found.colour}" if found.colour else "")
