"""The rooms of the house: names, sizes, imports and tests keep the rules.

One test a rule; each lists every fault at once.
"""

import ast
import re
import tomllib
from collections import Counter
from functools import cache
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parent.parent
PACKAGES = ("catalog", "selector", "ui")
FORBIDDEN = {"utils", "helpers", "common", "base", "misc", "types", "select", "copy", "code"}
# The page's folder stands first on the import path, where these would hide the packages.
FORBIDDEN_IN_UI = {"catalog", "selector"}
MOST_LINES = 400
# What a stranger must look through before he enters a room.
MOST_FILES_IN_SELECTOR = 12
DOCUMENTS, LONGEST_LINE = ("README.md", "DEVELOPERS.md"), 120
# Each package and those it may import of ours.
MAY_IMPORT = {"catalog": {"catalog"}, "selector": {"catalog", "selector"}, "ui": set(PACKAGES)}
# What stands under tests/ beside tests, fixtures and the scripts that are run by hand.
LENT = {
    "catalogued.py",
    "criteria_library.py",
    "dog.py",
    "examples.py",
    "form.py",
    "layer_forecast.py",
    "letter_text.py",
    "measured_bar.py",
    "once.py",
    "overlay_case.py",
    "page_server.py",
    "page_text.py",
    "pdf_text.py",
    "peg.py",
    "printed.py",
    "procedure.py",
    "rounds.py",
    "small_requirement.py",
    "svg_text.py",
    "tasks.py",
    "tempered_by_composition.py",
    "trade.py",
    "traps.py",
    "unexplained.py",
    "whole_requirement.py",
}


def files(*folders: str) -> list[Path]:
    """Return the Python files of some folders, from the root of the repository."""
    return sorted(
        path.relative_to(ROOT) for folder in folders for path in (ROOT / folder).rglob("*.py")
    )


OURS, TESTS = files(*PACKAGES), files("tests")
MODULES = [path for path in OURS if path.stem not in {"__init__", "__main__"}]


class Facts(NamedTuple):
    """What the rules ask of a file; kept in place of its tree, which is large."""

    imported: frozenset[str]
    """Dotted names of all modules that it imports, or imports from."""
    named: frozenset[str]
    """Every name that it uses."""
    public: tuple[str, ...]
    """Its public functions."""
    said: str
    """What it says of itself."""


@cache
def facts(path: Path) -> Facts:
    """Return what the rules ask of a file, read and gone through once."""
    tree = ast.parse((ROOT / path).read_text(encoding="utf-8"))
    imported, named = set(), set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Name):
            named.add(node.id)
        elif isinstance(node, ast.Attribute):
            named.add(node.attr)
        elif isinstance(node, ast.Import):
            imported |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            named |= {alias.name for alias in node.names}
            imported |= {node.module or "."}
            imported |= {f"{node.module}.{alias.name}" for alias in node.names}
    public = tuple(
        node.name
        for node in tree.body
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")
    )
    said = ast.get_docstring(tree) or ""
    return Facts(frozenset(imported), frozenset(named), public, said)


def refuse(faults: list[str]) -> None:
    """Fail with every fault, one a line."""
    assert not faults, "\n" + "\n".join(faults)


def dotted(module: Path) -> str:
    return ".".join(module.with_suffix("").parts)


def test_every_module_has_its_tests_in_its_room():
    """A test file of its name, or one of the room that imports it."""
    faults, tests = [], [(path.as_posix(), facts(path).imported) for path in TESTS]
    for module in MODULES:
        room, name = f"tests/{module.parent.as_posix()}/", dotted(module)
        own = f"{room}test_{module.name}"
        if not any(
            path == own or (path.startswith(room) and name in imported)
            for path, imported in tests
        ):
            faults.append(f"{module}: no test under {room} is of its name or imports it")
    refuse(faults)


def test_no_public_function_goes_untested_or_serves_its_own_module_only():
    """A test names it, or another module does, whose tests call it."""
    users = Counter(name for path in (*TESTS, *OURS) for name in facts(path).named)
    faults = []
    for module in MODULES:
        own = facts(module).named
        faults += [
            f"{module}: {name}" for name in facts(module).public if users[name] == (name in own)
        ]
    refuse(faults)


def test_modules_have_permitted_names():
    faults = []
    for module in MODULES:
        refused = FORBIDDEN | (FORBIDDEN_IN_UI if module.parts[0] == "ui" else set())
        faults += [f"{module}: {n}" for n in refused & {*module.parent.parts[1:], module.stem}]
    refuse(faults)


def test_modules_are_short():
    lengths = [(m, (ROOT / m).read_text(encoding="utf-8").count("\n")) for m in MODULES]
    refuse([f"{module}: {lines} lines" for module, lines in lengths if lines > MOST_LINES])


def test_modules_say_what_they_are():
    refuse([str(module) for module in MODULES if not facts(module).said])


def test_imports_flow_one_way():
    faults = []
    for module in MODULES:
        tops = {name.split(".")[0] for name in facts(module).imported} & {*PACKAGES, "tests"}
        faults += [f"{module}: {top}" for top in tops - MAY_IMPORT[module.parts[0]]]
    refuse(faults)


def test_the_selector_is_rooms_and_few_files():
    loose = sorted(path.name for path in (ROOT / "selector").glob("*.py"))
    assert len(loose) <= MOST_FILES_IN_SELECTOR, loose


def test_commands_are_in_the_readme():
    from typer.main import get_command  # noqa: PLC0415

    from selector.commands import cli  # noqa: PLC0415

    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    commands = get_command(cli).commands
    refuse([n for n in commands if not re.search(rf"\btemperwright {n}\b", readme)])


def test_lines_of_the_documents_fit_a_window():
    faults = [
        f"{name}:{number}: {len(line)} characters"
        for name in DOCUMENTS
        for number, line in enumerate((ROOT / name).read_text(encoding="utf-8").split("\n"), 1)
        if len(line) > LONGEST_LINE
    ]
    refuse(faults)


def test_dependencies_are_bound_below_and_above():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = [*project["dependencies"], *project["optional-dependencies"]["test"]]
    bound = re.compile(r"[a-z][a-z0-9-]*>=[\d.]+,<[\d.]+")
    refuse([dependency for dependency in asked if not bound.fullmatch(dependency)])


def test_no_package_marker_shadows_a_package_under_tests():
    assert list((ROOT / "tests").rglob("__init__.py")) == []


def test_files_that_pytest_would_pass_over_are_known():
    odd = {
        path.relative_to("tests").as_posix()
        for path in TESTS
        if not path.name.startswith("test_") and path.name != "conftest.py"
    }
    assert {name for name in odd if not name.startswith("benchmarks/")} == LENT


def test_published_checks_are_named_by_author_and_year_and_cite_it():
    faults = []
    for path in files("tests/published"):
        name = re.fullmatch(r"test_[a-z]+(\d{4})_[a-z_]+", path.stem)
        cited = facts(path).said
        stated = re.search(r"from memory|common practice", cited, re.IGNORECASE)
        if name is None or not (name[1] in cited or stated):
            faults.append(str(path))
    refuse(faults)
