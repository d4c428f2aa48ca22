"""Whether a quench hardens a steel itself, its core under a case, or nothing, and why not."""

from typing import Literal

from catalog.steel import Steel

Hardening = Literal["itself", "core", "not"]


def hardening(steel: Steel) -> Hardening:
    """Return what a quench hardens of a steel.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.

    Returns
    -------
    {"itself", "core", "not"}
        A steel that only takes a case has a core where its standard sets a least carbon.
    """
    # What only a firm hardens is hardened all the same.
    quenched = steel.hardened is not None and "case" not in steel.hardens_by
    if "quench" in steel.hardens_by or quenched:
        return "itself"
    carbon = steel.composition_wt_pct.get("C")
    cased = "case" in steel.hardens_by and carbon is not None and carbon.min is not None
    return "core" if cased else "not"


def why_not(steel: Steel) -> str:
    """Return why no hardness can be given of a steel that a quench does not harden."""
    reason = next((r for r in steel.limitation if r.process == "quench"), None)
    said = [] if reason is None else [reason.why.text]
    if reason is None or reason.verdict == "no":
        said = [f"{steel.spoken} is not hardened by a quench.", *said]
    return " ".join([*said, *_instead(steel)])


def _instead(steel: Steel) -> list[str]:
    """Return what hardens it instead, with the published figures there are."""
    aged = steel.aged
    if aged is not None:
        points = ", ".join(f"{hrc:g} HRC at {c:g} °C" for c, hrc in aged.curve_hrc.points)
        return [f"Aged {aged.time_h.value:g} h: {points} ({aged.curve_hrc.source})."]
    hard = next((c for c in steel.condition if c.name == "hard-element"), None)
    if hard is not None and hard.hardness_hrc is not None:
        span = hard.hardness_hrc
        return [f"It is bought ready hard, {span.low:g} to {span.high:g} HRC ({span.source})."]
    return ["It takes a case."] if "case" in steel.hardens_by else []
