"""The catalogue: steels, routes, media, heat sources, prices and cautions, all with sources."""

from catalog.load import Catalog, CatalogError, load_catalog
from catalog.route import Route
from catalog.steel import Steel

__all__ = ["Catalog", "CatalogError", "Route", "Steel", "load_catalog"]
