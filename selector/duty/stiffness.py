"""That hardness is no stiffness, said where a slender or bent part might tempt."""

from selector.requirement import Requirement

SLENDER = 8.0


def stiffness(asked: Requirement) -> str | None:
    """Return that hardening does not stiffen, for a slender or bent part where it may tempt."""
    part = asked.part
    slim = min(section.size for section in part.section)
    # A spring is meant to give, and what is struck along its length is not bent.
    if asked.is_spring or asked.load.impact == "hammered":
        return None
    if asked.load.bending or part.length_mm > SLENDER * slim:
        return (
            "Hardening does not make it stiffer: the modulus of steel is the same soft or "
            "hard. Use a larger diameter, a shorter reach or a support."
        )
    return None
