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
STEELS = [path for path in FILES if path.parent.name == "steels"]
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


def test_every_file_is_plausible():
    faults = []
    for path in FILES:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
        record = MODELS[path.parent.name].model_validate({"slug": path.stem, **data})
        faults += [f"{slug_id(path)}: {fault}" for fault in implausible(record)]
    assert faults == []


def test_the_audit_finds_no_fault():
    assert audit(load_catalog()) == ()


def off_line(text: str) -> list[str]:
    """Return the lines of a file that are not one value each, and how it ends if wrongly."""
    faults = [line for line in text.splitlines() if not LINE.fullmatch(line)]
    return faults + ["no new line at its end"] * (not text.endswith("\n"))


def test_every_file_has_one_value_a_line():
    texts = {
        slug_id(path): path.read_bytes().decode()
        for path in [*FILES, *(SHIPPED / name for name in SHARED)]
    }
    assert {name: bad for name, text in texts.items() if (bad := off_line(text))} == {}
    assert [name for name, text in texts.items() if "\r" in text] == []


@pytest.mark.parametrize("bad", ["a = 1; b = 2", "a=1", "c45 = [1,", "1.5,", "a = 'x'"])
def test_the_line_rule_refuses_other_styles(bad):
    assert off_line(f"a = 1\n{bad}\n") == [bad]
    assert len(off_line(bad)) == 2


def test_keys_stand_in_the_order_of_the_model():
    astray = {
        slug_id(path): given
        for path in FILES
        if not _ordered(
            given := list(tomllib.loads(path.read_text(encoding="utf-8"))),
            list(MODELS[path.parent.name].model_fields),
            _tables(path),
        )
    }
    assert astray == {}
    assert not _ordered(["b", "a"], ["a", "b"], set())


def _tables(path: Path) -> set[str]:
    """Return the top-level keys written as tables: TOML wants them after the plain ones."""
    loaded = re.findall(r"^\[\[?([A-Za-z_]+)", path.read_text(encoding="utf-8"), re.MULTILINE)
    return set(loaded)


def _ordered(given: list[str], fields: list[str], tables: set[str]) -> bool:
    """Return whether plain keys and tables each follow the order of the model."""
    plain = [key for key in given if key not in tables]
    wide = [key for key in given if key in tables]
    return all(part == sorted(part, key=fields.index) for part in (plain, wide))


def misnamed(named: dict[str, list[object]]) -> list[object]:
    """Return the systems and names of a steel that are none."""
    bad: list[object] = [system for system in named if system not in Designations.model_fields]
    bad += [system for system, names in named.items() if not names]
    bad += [
        name
        for names in named.values()
        for name in names
        if not (isinstance(name, str) and name == name.strip())
    ]
    numbers = named.get("number", [])
    return bad + [n for n in numbers if not re.fullmatch(r"1\.\d{4}", str(n))]


def test_designations_are_text():
    faults = {
        path.stem: bad
        for path in STEELS
        if (bad := misnamed(tomllib.loads(path.read_text(encoding="utf-8"))["designations"]))
    }
    assert faults == {}


@pytest.mark.parametrize(
    "bad", [{"us": ["A2"]}, {"trade": []}, {"trade": [4140]}, {"aisi": [" A2"]},
            {"number": ["1.722"]}], ids=str,
)  # fmt: skip
def test_a_bad_name_is_seen(bad):
    assert misnamed(bad)


def test_every_file_is_named_after_a_designation():
    steels = load_catalog().steels.values()
    assert [
        steel.slug
        for steel in steels
        if steel.slug
        not in {steel.family, *(n.casefold().replace(" ", "-") for n in steel.names())}
    ] == []


def test_own_estimates_are_called_estimated():
    known = load_catalog()
    estimates = {
        f"{slug}: {key}": value.basis
        for folder in MODELS
        for slug, record in getattr(known, folder).items()
        for key, value in sourced(record)
        if value.source == "own-estimate"
    }
    assert estimates
    assert {
        key: basis for key, basis in estimates.items() if basis not in {"estimated", "computed"}
    } == {}


def test_sources_are_in_order_after_those_that_are_no_publication():
    keys = list(load_catalog().sources)
    assert keys[:2] == ["common-practice", "own-estimate"]
    assert keys[2:] == sorted(keys[2:])
