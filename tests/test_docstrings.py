"""Docstrings of the physics: units on every line, agreeing with names; references; limits."""

import doctest
import importlib
import inspect
import re
from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest

from selector.validity import LIMITS

ROOT = Path(__file__).parent.parent
PHYSICS = ("heat", "metallurgy", "mechanics", "hazards")
SECTIONS = ["Parameters", "Returns", "Yields", "Raises", "Notes", "References", "Examples"]
# Longest first: "_c_per_s" is no second.
UNIT_OF_SUFFIX = {
    "_w_per_m2_k": "W/(m² K)",
    "_c_per_s": "°C/s",
    "_n_per_mm": "N/mm",
    "_per_mm": "1/mm",
    "_kg_per_m3": "kg/m³",
    "_l_per_min": "l/min",
    "_wt_pct": "wt %",
    "_fraction": "-",
    "_astm": "ASTM",
    "_mpa": "MPa",
    "_hrc": "HRC",
    "_pct": "%",
    "_deg": "°",
    "_min": "min",
    "_hv": "HV",
    "_hb": "HB",
    "_mm": "mm",
    "_nm": "N m",
    "_kg": "kg",
    "_c": "°C",
    "_k": "K",
    "_m": "m",
    "_s": "s",
    "_h": "h",
    "_j": "J",
    "_n": "N",
    "_l": "l",
}
ALLOWED = {*UNIT_OF_SUFFIX.values(), "W/(m² K)", "W/(m K)", "J/(kg K)", "mm²/s"}


def modules() -> list[ModuleType]:
    """Return the physics modules and the hardness scale they share."""
    paths = [path for package in PHYSICS for path in (ROOT / "selector" / package).glob("*.py")]
    names = [f"selector.{path.parent.name}.{path.stem}" for path in sorted(paths)]
    return [
        importlib.import_module(name)
        for name in [*names, "selector.hardness_scale"]
        if not name.endswith("__init__")
    ]


def is_function(thing: object) -> bool:
    """Return whether something is a function, cached or not."""
    return inspect.isfunction(inspect.unwrap(thing)) if callable(thing) else False


def functions() -> dict[str, Callable]:
    """Return the public functions of the physics by their key in the table of limits."""
    return {
        f"{module.__name__.split('.')[-1]}.{name}": function
        for module in modules()
        for name, function in inspect.getmembers(module, is_function)
        if not name.startswith("_") and function.__module__ == module.__name__
    }


FUNCTIONS = functions()


def sections(text: str) -> dict[str, str]:
    """Return the sections of a docstring by title."""
    parts = re.split(r"\n([A-Z][a-z]+)\n-{3,}\n", "\n" + text)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def entries(section: str) -> dict[str, str]:
    """Return the entries of a Parameters or Returns section, header to description."""
    computed = re.split(r"\n(?=\S)", section.strip("\n"))
    return dict(entry.split("\n", 1) if "\n" in entry else (entry, "") for entry in computed)


def unit(description: str) -> str | None:
    """Return the last bracketed unit of a description."""
    computed = re.findall(r"\[([^\]\n]+)\](?!_)", description)
    return computed[-1] if computed else None


def unit_by_name(name: str) -> str | None:
    """Return the unit that a name ends in."""
    ends = f"_{name}"
    return next((u for suffix, u in UNIT_OF_SUFFIX.items() if ends.endswith(suffix)), None)


def parts_of(key: str) -> dict[str, str]:
    return sections(inspect.getdoc(FUNCTIONS[key]) or "")


def returned(key: str) -> dict[str, str]:
    """Return type to description of what a function gives."""
    parts = parts_of(key)
    return entries(parts.get("Returns") or parts.get("Yields") or "")


def documented(key: str) -> dict[str, str]:
    """Return name to description of each documented parameter."""
    listed = entries(parts_of(key).get("Parameters", ""))
    return {
        name.strip(" *"): text
        for header, text in listed.items()
        if header
        for name in header.split(":")[0].split(",")
    }


def test_the_reader_sees_units_and_their_lack():
    text = "Return.\n\nParameters\n----------\ndepth_mm : float\n    Depth [1]_. [m]\n"
    listed = entries(sections(text + "b : x\n    B.")["Parameters"])
    assert [unit(part) for part in listed.values()] == ["m", None]
    assert [unit_by_name(header.split(" ")[0]) for header in listed] == ["mm", None]
    assert unit_by_name("rate_c_per_s") == "°C/s"


def refuse(amiss: Callable[[str], object]) -> None:
    """Fail with every function that something is amiss with by a rule, one a line."""
    faults = [f"{key}: {fault}" for key in FUNCTIONS if (fault := amiss(key))]
    assert not faults, "\n" + "\n".join(faults)


def test_sections_stand_in_order():
    def amiss(key):
        given = list(parts_of(key))
        return given if given != [title for title in SECTIONS if title in given] else None

    refuse(amiss)


def test_every_parameter_is_documented():
    def amiss(key):
        given = list(inspect.signature(FUNCTIONS[key]).parameters)
        return given if list(documented(key)) != given else None

    refuse(amiss)


def test_every_parameter_has_an_allowed_unit():
    def amiss(key):
        units = {name: unit(text) for name, text in documented(key).items()}
        return {name: u for name, u in units.items() if u not in ALLOWED}

    refuse(amiss)


def test_every_return_has_an_allowed_unit():
    def amiss(key):
        units = [unit(text) for text in returned(key).values()]
        return units if not units or set(units) - ALLOWED else None

    refuse(amiss)


def test_units_of_parameters_agree_with_their_names():
    def amiss(key):
        units = {name: unit(text) for name, text in documented(key).items()}
        return {name: u for name, u in units.items() if (unit_by_name(name) or "-") != u}

    refuse(amiss)


def test_unit_of_the_return_agrees_with_the_function_name():
    def amiss(key):
        named = unit_by_name(key.split(".")[1].split("_from_")[0])
        given = {unit(text) for text in returned(key).values()}
        return given if named is not None and given != {named} else None

    refuse(amiss)


def test_references_are_given():
    cited = re.compile(r"^\.\. \[1\] \S", re.MULTILINE)
    refuse(lambda key: not cited.search(parts_of(key).get("References", "")))


def test_references_are_those_cited():
    def amiss(key):
        text = inspect.getdoc(FUNCTIONS[key]) or ""
        listed = set(re.findall(r"^\.\. \[(\d+)\]", text, re.MULTILINE))
        return set(re.findall(r"\[(\d+)\]_", text)) - listed

    refuse(amiss)


def test_limits_belong_to_inputs_in_their_units():
    amiss = []
    for key, limits in LIMITS.items():
        inputs = inspect.signature(FUNCTIONS[key]).parameters
        for limit in limits:
            element = re.fullmatch(r"[A-Z][a-z]?", limit.name)
            known = element or limit.name in inputs
            in_unit = limit.unit == ("wt %" if element else unit_by_name(limit.name) or "-")
            if not (known and in_unit and limit.low < limit.high and limit.source):
                amiss.append(f"{key}: {limit}")
    assert not amiss, "\n" + "\n".join(amiss)


def with_examples() -> list[str]:
    """Return the names of all modules that hold a doctest."""
    return [
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for package in ("catalog", "selector", "ui")
        for path in sorted((ROOT / package).rglob("*.py"))
        if ">>> " in path.read_text(encoding="utf-8")
    ]


@pytest.mark.parametrize("name", with_examples())
def test_examples_give_what_they_show(name):
    with np.printoptions(legacy=False):
        result = doctest.testmod(importlib.import_module(name))
    assert result.attempted > 0
    assert result.failed == 0
