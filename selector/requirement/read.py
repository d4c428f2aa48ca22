"""A TOML or JSON file, or plain data, into a Requirement; all faults are listed at once."""

import json
import tomllib
from collections.abc import Mapping, Sized
from pathlib import Path
from typing import Any, TypeVar

from pydantic import TypeAdapter, ValidationError

from selector.errors import Problem, RequirementError
from selector.requirement.whole import Requirement

T = TypeVar("T")
_LARGEST = 1_000_000
_LONGEST_INT = 10**18
# A dotted key costs the TOML reader the square of its length; ours have two parts.
_MOST_DOTS = 100
# What pydantic calls a fault, in the words of the workshop: rule and next step.
_WORDS = {
    "missing": ("given", "Add it; `temperwright example` prints a complete file."),
    "extra_forbidden": (
        "a key we know",
        "Check the spelling; `temperwright schema --requirement` lists them.",
    ),
    "literal_error": ("one of {expected}", "Choose one of these words."),
    "too_short": ("a list with at least {min_length} entry", "Add one."),
    "too_long": ("a list of at most {max_length} entries", "Shorten it."),
    "greater_than": ("more than {gt:g}", "Check the figure."),
    "greater_than_equal": ("at least {ge:g}", "Check the figure."),
    "less_than": ("less than {lt:g}", "Check the figure."),
    "less_than_equal": ("at most {le:g}", "Check the figure."),
    "finite_number": ("a finite number", "Check the figure."),
    "int_type": ("a whole number", "Write the figure itself."),
    "int_parsing": ("a whole number", "Write the figure itself."),
    "int_parsing_size": ("a whole number", "Write the figure itself."),
    "int_from_float": ("a whole number", "Write it without decimals."),
    "float_type": ("a number", "Write the figure itself."),
    "float_parsing": ("a number", "Write the figure itself, without a unit."),
    "bool_type": ("true or false", "Write true or false, without quotes."),
    "bool_parsing": ("true or false", "Write true or false, without quotes."),
    "string_type": ("text", "Put it in quotes."),
    "string_unicode": ("readable text", "Retype it."),
    "string_too_short": ("text of at least {min_length} character", "Write something."),
    "string_too_long": ("text of at most {max_length} characters", "Shorten it."),
    "model_type": ("a table of keys and values", "See `temperwright example` for its shape."),
    "model_attributes_type": ("a table of keys and values", "See `temperwright example`."),
    "tuple_type": ("a list", "Put the value in square brackets."),
    "dict_type": ("a table of keys and values", "See `temperwright example`."),
    "rule": ("{rule}", "{next_step}"),
}


def _problem(fault: Mapping[str, Any], under: str = "") -> Problem:
    """Return one pydantic fault in our words; of a value by itself, under its name."""
    place = ".".join(
        str(part + 1) if isinstance(part, int) else _short(part)
        for part in ((under,) if under else ()) + tuple(fault["loc"])
        if part != "[key]"
    )
    rule, step = _WORDS.get(fault["type"], ("what we can read ({msg})", "Check the value."))
    context = {"msg": fault["msg"], **fault.get("ctx", {})}
    absent = fault["type"] == "missing"
    return Problem(
        field=place or "requirement",
        rule=rule.format(**context),
        got="nothing" if absent else _shown(fault["input"]),
        next_step=step.format(**context),
    )


def _is_shadow(fault: Mapping[str, Any]) -> bool:
    """Return whether a list is called too short only because an entry of it is at fault."""
    return (
        fault["type"] == "too_short"
        and isinstance(fault["input"], Sized)
        and len(fault["input"]) >= fault["ctx"]["min_length"]
    )


def _shown(value: object) -> str:
    """Return a received value, short enough for one line."""
    if isinstance(value, dict):
        return _short(f"the keys {', '.join(map(str, value))}") if value else "an empty table"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    if value is None or isinstance(value, bool):
        return json.dumps(value)
    if isinstance(value, int) and abs(value) >= _LONGEST_INT:
        return "a number of more than 18 digits"
    return _short(repr(value) if isinstance(value, str) else str(value))


def _short(text: str) -> str:
    """Return a text that fits on a line, its end cut off where it is too long."""
    return text if len(text) <= 60 else text[:57] + "..."


def requirement_from(data: object) -> Requirement:
    """Return plain data as a Requirement.

    Parameters
    ----------
    data : object
        What a TOML or JSON file holds.

    Returns
    -------
    Requirement
        Validated and frozen.

    Raises
    ------
    RequirementError
        Listing every field that breaks a rule.
    """
    try:
        return Requirement.model_validate(data)
    except ValidationError as error:
        raise RequirementError(*_problems(error)) from error


def value_from(kind: TypeAdapter[T], data: object, name: str) -> T:
    """Return a value that stands by itself, such as an option of a command.

    Parameters
    ----------
    kind : TypeAdapter
        What it must be.
    data : object
        The value as given.
    name : str
        What the user calls it.

    Returns
    -------
    object
        Validated.

    Raises
    ------
    RequirementError
        Listing every rule it breaks.
    """
    try:
        return kind.validate_python(data)
    except ValidationError as error:
        raise RequirementError(*_problems(error, name)) from error


def _problems(error: ValidationError, under: str = "") -> list[Problem]:
    """Return all faults that pydantic found in our words."""
    faults = error.errors(include_url=False)
    return [_problem(fault, under) for fault in faults if not _is_shadow(fault)]


def _file(path: Path, rule: str, got: str, next_step: str) -> Problem:
    """Return the problem of a file that cannot be read as a requirement."""
    return Problem(f"file {path.name}", rule, got, next_step)


def text_in(path: Path) -> str:
    """Return the text of a part's file.

    Parameters
    ----------
    path : Path
        Of a requirement, in UTF-8.

    Returns
    -------
    str
        As it stands in the file.

    Raises
    ------
    RequirementError
        When it is no text file, empty, or far too large.
    """
    try:
        if path.stat().st_size > _LARGEST:
            raise RequirementError(
                _file(
                    path, "under 1 MB", f"{path.stat().st_size} bytes", "Is it the right file?"
                )
            )
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as error:
        raise RequirementError(
            _file(path, "UTF-8 text", "other bytes", "Save it as UTF-8.")
        ) from error
    except OSError as error:
        reason = error.strerror or "no file"
        raise RequirementError(
            _file(path, "a readable file", reason, "Check the path.")
        ) from error
    if not text.strip():
        raise RequirementError(
            _file(
                path,
                "a requirement",
                "an empty file",
                "`temperwright example` prints one to start from.",
            )
        )
    return text


def read_requirement(path: str | Path) -> Requirement:
    """Return the requirement in a file.

    Parameters
    ----------
    path : str or Path
        A `.json` file is read as JSON, any other as TOML.

    Returns
    -------
    Requirement
        Validated and frozen.

    Raises
    ------
    RequirementError
        When the file cannot be read or any field breaks a rule; all are listed.
    """
    path = Path(path)
    return requirement_from(data_of(text_in(path), path))


def data_of(text: str, path: Path) -> Any:  # noqa: ANN401 - whatever the file holds
    """Return the text of a part's file as plain data.

    Parameters
    ----------
    text : str
        As it stands in the file.
    path : Path
        What the file is called: a `.json` file is read as JSON, any other as TOML.

    Returns
    -------
    object
        Not yet held to any rule of a requirement.

    Raises
    ------
    RequirementError
        When it is no valid TOML or JSON.
    """
    as_json = path.suffix.lower() == ".json"
    nested = _file(path, "a plain file", "endless nesting", "Is it the right file?")
    if not as_json and any(line.count(".") > _MOST_DOTS for line in text.splitlines()):
        raise RequirementError(nested)
    try:
        return json.loads(text) if as_json else tomllib.loads(text)
    except ValueError as error:
        rule = f"valid {'JSON' if as_json else 'TOML'}"
        raise RequirementError(
            _file(path, rule, str(error), "Mend the line it names.")
        ) from error
    except RecursionError as error:
        raise RequirementError(nested) from error
