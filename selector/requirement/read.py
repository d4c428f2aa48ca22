"""A TOML or JSON file, or plain data, into a Requirement; all faults are listed at once."""

import json
from collections.abc import Mapping, Sized
from pathlib import Path
from typing import Any, TypeVar

import tomli
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


def _unread(name: str, rule: str, got: str, next_step: str) -> Problem:
    """Return the problem of a file that cannot be read as a requirement."""
    return Problem(f"file {_short(name)}", rule, got, next_step)


def parsed(name: str, content: bytes) -> dict[str, Any]:
    """Return what a requirement file holds, not yet checked.

    Parameters
    ----------
    name : str
        Its name; `.json` is read as JSON, any other as TOML.
    content : bytes
        All of it.

    Returns
    -------
    dict
        Plain data.

    Raises
    ------
    RequirementError
        When it is no such file, or would take long to read.
    """
    text = _text(name, content)
    as_json = name.lower().endswith(".json")
    kind = "JSON" if as_json else "TOML"
    try:
        data = _loaded(text, as_json=as_json)
    except RecursionError as error:
        step = "Is it the right file?"
        raise RequirementError(
            _unread(name, "a plain file", "endless nesting", step)
        ) from error
    except UnicodeEncodeError as error:
        raise RequirementError(
            _unread(name, "readable text", "half a character", "Retype it.")
        ) from error
    except ValueError as error:
        raise RequirementError(
            _unread(name, f"valid {kind}", str(error), "Mend the line it names.")
        ) from error
    if not isinstance(data, dict):
        step = "`temperwright example` prints one to start from."
        raise RequirementError(_unread(name, "a table of keys and values", _shown(data), step))
    return data


def parsed_file(path: Path) -> dict[str, Any]:
    """Return what the file at a path holds, not yet checked.

    Parameters
    ----------
    path : Path
        A `.json` file is read as JSON, any other as TOML.

    Returns
    -------
    dict
        Plain data; what cannot be read raises RequirementError.
    """
    return parsed(path.name, content_of(path))


def _loaded(text: str, *, as_json: bool) -> object:
    """Return what a text holds; raise what reading it raises, and quickly."""
    if not as_json and any(line.count(".") > _MOST_DOTS for line in text.splitlines()):
        raise RecursionError
    data: object = json.loads(text) if as_json else tomli.loads(text)
    # An escape may stand for half a character, which nothing can print.
    json.dumps(data, default=str, ensure_ascii=False).encode()
    return data


def _text(name: str, content: bytes) -> str:
    """Return a file's text, refusing what is no text file."""
    if len(content) > _LARGEST:
        raise RequirementError(
            _unread(name, "under 1 MB", f"{len(content)} bytes", "Is it the right file?")
        )
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise RequirementError(
            _unread(name, "UTF-8 text", "other bytes", "Save it as UTF-8.")
        ) from error
    if not text.strip():
        step = "`temperwright example` prints one to start from."
        raise RequirementError(_unread(name, "a requirement", "an empty file", step))
    return text


def content_of(path: Path) -> bytes:
    """Return the bytes of a file, one more than is taken where it is too large.

    Parameters
    ----------
    path : Path
        Of a requirement.

    Returns
    -------
    bytes
        Not yet checked.

    Raises
    ------
    RequirementError
        When it cannot be opened.
    """
    try:
        with path.open("rb") as file:
            return file.read(_LARGEST + 1)
    except OSError as error:
        reason = error.strerror or "no file"
        raise RequirementError(
            _unread(path.name, "a readable file", reason, "Check the path.")
        ) from error


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
    return requirement_from(parsed_file(Path(path)))
