"""Names given on the command line, checked against the catalogue."""

from catalog import Catalog
from selector.errors import Problem, RequirementError


def known_steel(name: str | None, catalog: Catalog) -> None:
    """Refuse a steel the catalogue does not hold.

    Parameters
    ----------
    name : str or None
        Any designation; None passes.
    catalog : Catalog
        What is known.

    Raises
    ------
    RequirementError
        When no steel has this name.
    """
    if name is not None and not catalog.find(name):
        step = "`temperwright steels` lists them."
        raise RequirementError(Problem("--steel", "a known steel", repr(name), step))


def known_route(name: str | None, catalog: Catalog) -> None:
    """Refuse a route the catalogue does not hold.

    Parameters
    ----------
    name : str or None
        Slug or kind; None passes.
    catalog : Catalog
        What is known.

    Raises
    ------
    RequirementError
        When no route has this slug or kind.
    """
    names = {n for route in catalog.routes.values() for n in (route.slug, route.kind)}
    if name is not None and name not in names:
        step = "`temperwright routes` lists them."
        raise RequirementError(Problem("--route", "a known route", repr(name), step))
