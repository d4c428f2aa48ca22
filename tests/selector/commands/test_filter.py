import pytest

from catalog import CatalogError
from catalog.load import SHIPPED
from selector.commands.filter import checked_catalog, known_route, known_steel
from selector.errors import RequirementError


@pytest.mark.parametrize("name", [None, "C45", "EN 19", "en19", "silver steel", "1.7225"])
def test_any_designation_is_known(catalog, name):
    known_steel(name, catalog)


@pytest.mark.parametrize("name", ["", "unobtainium", "C4", "!!!"])
def test_an_unknown_steel_is_refused(catalog, name):
    with pytest.raises(RequirementError, match=f"--steel must be a known steel; got '{name}'"):
        known_steel(name, catalog)


def test_slugs_and_kinds_of_routes_are_known(catalog):
    known_route(None, catalog)
    for route in catalog.routes.values():
        known_route(route.slug, catalog)
        known_route(route.kind, catalog)


@pytest.mark.parametrize("name", ["", "magic", "C45"])
def test_an_unknown_route_is_refused(catalog, name):
    with pytest.raises(RequirementError, match=f"--route must be a known route; got '{name}'"):
        known_route(name, catalog)


def test_without_folders_the_shipped_catalogue_is_taken(catalog):
    assert checked_catalog(()) is catalog


def test_a_folder_that_fails_the_audit_is_refused(tmp_path):
    (tmp_path / "steels").mkdir()
    text = (SHIPPED / "steels" / "c45.toml").read_text(encoding="utf-8")
    lost = text.replace("family = ", 'family = "nowhere" # ')
    (tmp_path / "steels" / "c45.toml").write_text(lost, encoding="utf-8")
    with pytest.raises(CatalogError, match=r"c45.toml: family: .*got nowhere"):
        checked_catalog((tmp_path,))
