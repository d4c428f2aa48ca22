"""Baths that no quench can be computed in, named by their field."""

from collections.abc import Mapping
from dataclasses import replace

from catalog.medium import Medium
from selector.errors import OutOfRangeError, Problem
from selector.heat.boiling import Bath, bath_temperature_c
from selector.requirement.workshop import Workshop


def bath_problems(workshop: Workshop, media: Mapping[str, Medium]) -> list[Problem]:
    """Return what is wrong with baths that are frozen, boiling or on fire, by their field."""
    problems: list[Problem] = []
    for number, kept in enumerate(workshop.bath, start=1):
        medium = media.get(kept.medium)
        if medium is None:
            continue
        bath = Bath(medium.kind, kept.temperature, kept.agitation)  # type: ignore[arg-type]
        try:
            bath_temperature_c(bath)
        except OutOfRangeError as error:
            field = f"workshop.bath.{number}.temperature"
            problems += [
                replace(problem, field=field)
                for problem in error.problems
                if problem.field == "bath_temperature_c"
            ]
    return problems
