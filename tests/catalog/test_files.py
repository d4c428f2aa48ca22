"""Every catalogue file by itself: it loads, it is sound, and it is written the house way."""

import re
import tomllib
from pathlib import Path

import pytest

from catalog import load_catalog
from catalog.audit import audit
from catalog.heat_source import HeatSource
from catalog.load import SHIPPED
from catalog.medium import Medium
from catalog.quantity import implausible, sourced
from catalog.route import Route
from catalog.steel import Designations, Steel

MODELS = {"steels": Steel, "routes": Route, "media": Medium, "heat_sources": HeatSource}
FILES = [path for folder in MODELS for path in sorted((SHIPPED / folder).glob("*.toml"))]
SHARED = ["cautions.toml", "families.toml", "prices.toml", "sources.toml"]

NUMBER = r"-?\d+(\.\d+)?"
# A list may run over several lines when each of its entries has one to itself.
LINE = re.compile(
    r"""
    (\#\s.+)?                                     # nothing, or a remark
    | \[\[?[A-Za-z0-9_.-]+\]\]?                   # a table
    | (?:[A-Za-z0-9_.-]+|"[A-Za-z0-9_.-]+")\s=\s(    # a key and one value
        ".*" | true | false | """
    + NUMBER
    + r"""
        | \{\ .+\ \} | \[.*\] | \[
      )
    | \s\s(\{\ .+\ \}|".*"),                      # an entry of such a list
    | \]
    """,
    re.VERBOSE,
)


def slug_id(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


@pytest.fixture(scope="module")
def faults() -> tuple[str, ...]:
    return audit(load_catalog())


@pytest.mark.parametrize("path", FILES, ids=slug_id)
def test_file_is_sound(path, faults):
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    record = MODELS[path.parent.name].model_validate({"slug": path.stem, **data})
    assert list(implausible(record)) == []
    assert [fault for fault in faults if fault.startswith(f"{path.name}:")] == []


@pytest.mark.parametrize("name", SHARED)
def test_shared_file_is_sound(name, faults):
    assert [fault for fault in faults if fault.startswith(f"{name}:")] == []


def test_no_fault_is_left_over(faults):
    assert faults == ()


@pytest.mark.parametrize(
    "path", [*FILES, *(SHIPPED / name for name in SHARED)], ids=slug_id
)  # fmt: skip
def test_file_has_one_value_a_line(path):
    text = path.read_text(encoding="utf-8")
    assert text.endswith("\n")
    assert "\r" not in text
    assert [line for line in text.splitlines() if not LINE.fullmatch(line)] == []


@pytest.mark.parametrize("bad", ["a = 1; b = 2", "a=1", "c45 = [1,", "1.5,", "a = 'x'"])
def test_the_line_rule_refuses_other_styles(bad):
    assert LINE.fullmatch(bad) is None


@pytest.mark.parametrize("path", FILES, ids=slug_id)
def test_keys_stand_in_the_order_of_the_model(path):
    model = MODELS[path.parent.name]
    given = list(tomllib.loads(path.read_text(encoding="utf-8")))
    assert _ordered(given, list(model.model_fields), _tables(path))


def _tables(path: Path) -> set[str]:
    """Return the top-level keys written as tables: TOML wants them after the plain ones."""
    loaded = re.findall(r"^\[\[?([A-Za-z_]+)", path.read_text(encoding="utf-8"), re.MULTILINE)
    return set(loaded)


def _ordered(given: list[str], fields: list[str], tables: set[str]) -> bool:
    """Return whether plain keys and tables each follow the order of the model."""
    plain = [key for key in given if key not in tables]
    wide = [key for key in given if key in tables]
    return all(part == sorted(part, key=fields.index) for part in (plain, wide))


@pytest.mark.parametrize("path", sorted((SHIPPED / "steels").glob("*.toml")), ids=slug_id)
def test_designations_are_text(path):
    named = tomllib.loads(path.read_text(encoding="utf-8"))["designations"]
    assert named.keys() <= Designations.model_fields.keys()
    for names in named.values():
        assert names
        assert all(isinstance(name, str) and name == name.strip() for name in names)
    assert all(re.fullmatch(r"1\.\d{4}", number) for number in named.get("number", []))


@pytest.mark.parametrize("path", sorted((SHIPPED / "steels").glob("*.toml")), ids=slug_id)
def test_the_file_is_named_after_a_designation(path):
    steel = load_catalog().steels[path.stem]
    names = {name.casefold().replace(" ", "-") for name in steel.names()}
    assert path.stem in {*names, steel.family}


@pytest.mark.parametrize("path", FILES, ids=slug_id)
def test_own_estimates_are_called_estimated(path):
    record = getattr(load_catalog(), path.parent.name)[path.stem]
    for key, value in sourced(record):
        if value.source == "own-estimate":
            assert value.basis in {"estimated", "computed"}, key


def test_sources_are_in_order_after_those_that_are_no_publication():
    keys = list(load_catalog().sources)
    assert keys[:2] == ["common-practice", "own-estimate"]
    assert keys[2:] == sorted(keys[2:])
