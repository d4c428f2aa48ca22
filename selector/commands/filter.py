"""What the command line names, checked: catalogue folders, a steel, a route."""

from collections.abc import Sequence
from pathlib import Path

from catalog import Catalog, CatalogError, load_catalog
from selector.errors import Problem, RequirementError


def checked_catalog(folders: Sequence[Path]) -> Catalog:
    """Return the shipped catalogue under the user's folders, which must pass the audit.

    Parameters
    ----------
    folders : sequence of Path
        The user's own catalogue folders.

    Returns
    -------
    Catalog
        Sound in itself and across its files.

    Raises
    ------
    CatalogError
        When a folder breaks a rule.
    """
    known = load_catalog(*folders)
    if folders:
        from catalog.audit import audit  # noqa: PLC0415

        faults = audit(known)
        if faults:
            raise CatalogError(faults)
    return known


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
    meant = None if name is None else catalog.look_up(name)
    if meant is not None and not meant.steels:
        problem = Problem("--steel", "a known steel", repr(name), meant.did_you_mean)
        raise RequirementError(problem)


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
    if name is not None and name not in catalog.route_names():
        step = "`temperwright routes` lists them."
        raise RequirementError(Problem("--route", "a known route", repr(name), step))
