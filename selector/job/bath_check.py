"""Baths too harsh for a steel, that no quench can be computed in, or that burn people."""

from collections.abc import Mapping
from dataclasses import replace

from catalog.medium import Medium
from catalog.steel import Steel
from selector.errors import OutOfRangeError, Problem
from selector.heat.boiling import Bath, bath_temperature_c
from selector.job.screening import heated_thickness
from selector.job.treatment import Treatment
from selector.requirement import Requirement
from selector.requirement.workshop import Workshop
from selector.wording import in_sentence

# Kept hot on purpose: below its range salt is solid and oil is no martempering oil.
KEPT_HOT = frozenset({"hot-salt", "hot-oil"})
# An oil is kept at least so far below its flash point: the 50 °F rule of fire codes for quench
# oil, as the caution on flash points has it. [°C]
BELOW_FLASH_C = 28.0


def is_too_harsh(steel: Steel, medium: Medium | None) -> bool:
    """Return whether a bath is of water and the steel is known as made for a milder one."""
    made_for = steel.hardened.quench if steel.hardened else "water"
    return medium is not None and medium.severity_class == "water" and made_for != "water"


def too_mild_mm(asked: Requirement, work: Treatment) -> float | None:
    """Return up to which round oil hardens a steel made for water, where the part is thicker.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    work : Treatment
        A steel in a bath.

    Returns
    -------
    float or None
        The published limit of the section, None where it is kept or the steel has none. [mm]
    """
    hardened, medium = work.steel.hardened, work.medium
    if hardened is None or medium is None or hardened.quench != "water" or not work.hardens:
        return None
    limit = hardened.section_limit_mm.get(medium.severity_class)
    if limit is None or medium.severity_class == "water":
        return None
    return limit.value if heated_thickness(asked, work) > limit.value else None


def bath_problems(workshop: Workshop, media: Mapping[str, Medium]) -> list[Problem]:
    """Return what is wrong with baths that are frozen, boiling or on fire, by their field."""
    problems: list[Problem] = []
    for number, kept in enumerate(workshop.bath, start=1):
        medium = media.get(kept.medium)
        if medium is None:
            continue
        field = f"workshop.bath.{number}.temperature"
        bath = Bath(medium.kind, kept.temperature, kept.agitation)  # type: ignore[arg-type]
        try:
            bath_temperature_c(bath)
        except OutOfRangeError as error:
            found = [p for p in error.problems if p.field == "bath_temperature_c"]
            problems += [replace(problem, field=field) for problem in found]
            if found:
                continue
        if kept.temperature is not None:
            problems += _too_hot_or_cold(medium, kept.temperature, field)
    return problems


def _too_hot_or_cold(medium: Medium, at_c: float, field: str) -> list[Problem]:
    """Return what is wrong with a bath that is not kept at a heat that its medium stands."""
    name, got = in_sentence(medium.name), f"{at_c:g} °C"
    flash = medium.flash_point_c
    if flash is not None and at_c > flash.value - BELOW_FLASH_C:
        rule = f"at most {flash.value - BELOW_FLASH_C:.0f} °C in {name}"
        step = (
            f"It flashes at about {flash.value:.0f} °C: keep it {BELOW_FLASH_C:.0f} °C or more "
            "below that, or list an oil of your own with the flash point of its sheet."
        )
        return [Problem(field, rule, got, step)]
    span = medium.temperature_c
    if medium.kind in KEPT_HOT and not span.low <= at_c <= span.high:
        rule = f"between {span.low:g} and {span.high:g} °C in {name}"
        return [Problem(field, rule, got, "Give the heat that the bath is kept at.")]
    return []
