"""The cold step after a quench, for steel that keeps soft austenite."""

from selector.procedure.doing import Doing
from selector.procedure.practice import COLD_LEAST_MIN, COLD_MIN_PER_MM
from selector.record import StepOut
from selector.wording import shown_time


def frozen_steps(do: Doing) -> list[StepOut]:
    """Return the cold step right after the quench, of a route that has one."""
    cold = do.work.route.cold_c
    if cold is None:
        return []
    minutes = max(COLD_MIN_PER_MM * do.thick_mm, COLD_LEAST_MIN)
    return [
        StepOut(
            stage="freeze",
            action="At once, from hand-warm, into dry ice broken into spirit, "
            f"{cold.value:.0f} °C, {shown_time(60 * minutes)}; then let it warm by itself",
            short=f"cool on to {cold.value:.0f} °C for {shown_time(60 * minutes)}",
            means="dry ice and spirit in an open foam box, tongs",
            check="the spirit no longer boils round it; white frost all over",
            otherwise="it lay for a night: much of the gain is lost, temper it all the same",
            temperature_c=cold.value,
            minutes=round(minutes),
            source=cold.source,
        )
    ]
