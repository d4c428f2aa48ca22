"""The rooms of the house: tests mirror modules, names, sizes and imports keep the rules."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGES = ("catalog", "selector", "ui")
MODULES = sorted(
    path.relative_to(ROOT)
    for package in PACKAGES
    for path in (ROOT / package).rglob("*.py")
    if path.name != "__init__.py"
)

FORBIDDEN = {"utils", "helpers", "common", "base", "misc", "types", "select", "copy", "code"}
# The page's folder stands first on the import path, where these would hide the packages.
FORBIDDEN_IN_UI = {"catalog", "selector"}
MOST_LINES = 400
# Each package and those it may import of ours.
MAY_IMPORT = {"catalog": {"catalog"}, "selector": {"catalog", "selector"}, "ui": set(PACKAGES)}


def place_of_tests(module: Path) -> Path:
    """Return where the tests of `module` belong."""
    return Path("tests") / module.parent / f"test_{module.name}"


def imported(path: Path) -> set[str]:
    """Return the top-level names a file imports."""
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            names.add((node.module or ".").split(".")[0])
    return names


def commands() -> list[str]:
    """Return the names of all commands of the command line."""
    from typer.main import get_command  # noqa: PLC0415

    from selector.commands import cli  # noqa: PLC0415

    return sorted(get_command(cli).commands)


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_module_has_its_test_file(module):
    assert (ROOT / place_of_tests(module)).is_file(), f"{place_of_tests(module)} is missing"


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_module_has_a_permitted_name(module):
    refused = FORBIDDEN | (FORBIDDEN_IN_UI if module.parts[0] == "ui" else set())
    assert not refused & {*module.parent.parts[1:], module.stem}


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_module_is_short(module):
    lines = (ROOT / module).read_text(encoding="utf-8").count("\n")
    assert lines <= MOST_LINES


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_module_says_what_it_is(module):
    assert ast.get_docstring(ast.parse((ROOT / module).read_text(encoding="utf-8")))


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_imports_flow_one_way(module):
    ours = imported(ROOT / module) & {*PACKAGES, "tests"}
    assert ours <= MAY_IMPORT[module.parts[0]]


@pytest.mark.parametrize("name", commands())
def test_command_is_in_the_readme(name):
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert re.search(rf"\btemperwright {name}\b", readme)


def test_no_package_marker_shadows_a_package_under_tests():
    assert list((ROOT / "tests").rglob("__init__.py")) == []


def test_files_that_pytest_would_pass_over_are_known():
    """All but fixtures, the digit comparison and the scripts run by hand are tests."""
    odd = {
        path.relative_to(ROOT).as_posix()
        for path in (ROOT / "tests").rglob("*.py")
        if not path.name.startswith("test_") and path.name != "conftest.py"
    }
    assert {name for name in odd if not name.startswith("tests/benchmarks/")} == {
        "tests/catalogued.py",
        "tests/dog.py",
        "tests/form.py",
        "tests/once.py",
        "tests/printed.py",
    }


@pytest.mark.parametrize(
    "path", sorted((ROOT / "tests/published").glob("*.py")), ids=lambda p: p.stem
)
def test_a_published_check_is_named_by_author_and_year_and_cites_it(path):
    named = re.fullmatch(r"test_[a-z]+(\d{4})_[a-z_]+", path.stem)
    assert named
    cited = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
    stated = re.search(r"from memory|common practice", cited, re.IGNORECASE)
    assert named[1] in cited or stated
