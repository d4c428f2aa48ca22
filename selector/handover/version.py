"""Versions of what is installed."""

from importlib.metadata import PackageNotFoundError, version

PROGRAM = "temperwright"
NOT_INSTALLED = "in work"


def version_of(package: str = PROGRAM) -> str:
    """Return the version of a package, "in work" where it is run without being installed."""
    try:
        return version(package)
    except PackageNotFoundError:
        return NOT_INSTALLED
