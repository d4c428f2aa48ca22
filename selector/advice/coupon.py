"""The coupon plan: what to try on a bar whose grade or behaviour is not known."""

from selector.advice.advise import Advice
from selector.heat.colour import MAGNET_LOST_C

_STEPS = (
    (
        "Ask first: certificate, end paint, receipt, what it was. Strip plating outdoors, "
        "before any red heat."
    ),
    (
        "Spark and file the bar as it is: a file that skates says it is hard already, or has a "
        "hard skin; anneal it before cutting."
    ),
    "Cut a coupon of the same bar and the same section, about twice as long as thick.",
    (
        f"Heat it until a magnet lets go ({MAGNET_LOST_C:.0f} °C) and a little brighter, as "
        "evenly as the part will be heated; quench in oil, moving it."
    ),
    (
        "Try a new file on it and on a known piece. Bites: heat a second coupon and quench in "
        "water, behind a shield. Bites again: it does not harden; use it soft or case it."
    ),
    (
        "Skates: snap the coupon in a covered vice. Fine grey grain is right, coarse and "
        "sparkling is overheated; a soft ring or core shows how deep it hardened."
    ),
    (
        "Temper a third coupon as the part will be and try file, hammer and edge on it. "
        "Only then treat the part, and note what worked."
    ),
)


def needs_coupon(advice: Advice) -> bool:
    """Return whether a bar of unknown or unclear grade is in play."""
    unknown = any(racked.steel.kind == "unknown" for racked in advice.job.bench.stock)
    return unknown or bool(advice.job.bench.unclear)


def coupon_plan(advice: Advice) -> tuple[str, ...]:
    """Return the steps of a coupon trial, none where it is not needed. Common practice."""
    if not needs_coupon(advice):
        return ()
    return _STEPS
