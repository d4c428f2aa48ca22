"""Who hands a sheet over: name, address, mark and terms of a workshop, from `workshop.toml`."""

import json
from base64 import b64encode
from pathlib import Path
from typing import Annotated, Any

import tomli
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails

from catalog.text import RULE, is_steady
from selector.errors import Problem, RequirementError
from selector.handover.fonts import read

FIELD = "--workshop"
# A mark beside an address needs no more; a photograph does. [bytes]
MOST_BYTES = 1_000_000
MOST_TOML_BYTES = 200_000
_PICTURE = "Name a PNG, JPEG or SVG file of less than 1 MB."
# How files of pictures begin.
_SIGNATURES = {"png": b"\x89PNG\r\n\x1a\n", "jpg": b"\xff\xd8\xff"}


def _steady(text: str) -> str:
    """Return a line, refusing what would steer what shows it."""
    if not is_steady(text):
        raise ValueError(RULE)
    return text


Line = Annotated[str, Field(min_length=1, max_length=120), AfterValidator(_steady)]
Term = Annotated[str, Field(min_length=1, max_length=300), AfterValidator(_steady)]


class Identity(BaseModel):
    """A workshop as it signs: what is not given is left out of the sheet."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: Line = Field(title="Name on the letter")
    address: Annotated[tuple[Line, ...], Field(max_length=6)] = Field(
        default=(), title="Address", description="A line each."
    )
    phone: Line | None = Field(default=None, title="Telephone")
    mail: Line | None = Field(default=None, title="E-mail")
    signs: Line | None = Field(default=None, title="Who signs")
    logo: Path | None = Field(
        default=None, title="Mark", description="PNG, JPEG or SVG, less than 1 MB."
    )
    terms: Annotated[tuple[Term, ...], Field(max_length=8)] = Field(
        default=(), title="Terms", description="A line each, at the end of an offer."
    )


class Logo(BaseModel):
    """A picture as a sheet takes it: its kind and its bytes."""

    model_config = ConfigDict(frozen=True)

    kind: str
    content: bytes

    def for_sheet(self) -> dict[str, Any]:
        """Return the picture as templates take it: kind, bytes, and itself as a link."""
        mime = {"png": "image/png", "jpg": "image/jpeg", "svg": "image/svg+xml"}[self.kind]
        text = b64encode(self.content).decode()
        return {
            "kind": self.kind,
            "bytes": list(self.content),
            "link": f"data:{mime};base64,{text}",
        }


def read_identity(path: Path) -> Identity:
    """Return who hands the sheet over.

    Parameters
    ----------
    path : Path
        TOML; `logo` is found from its folder.

    Returns
    -------
    Identity
        With the logo's place made whole.

    Raises
    ------
    RequirementError
        When the file cannot be read or a field breaks its rule.
    """
    try:
        given = Identity.model_validate(tomli.loads(_text(path)))
    except tomli.TOMLDecodeError as error:
        step = "Mend that line, or start from the example in the README."
        raise RequirementError(Problem(FIELD, "TOML", f"{path} ({error})", step)) from error
    except ValidationError as error:
        raise RequirementError(*(_problem(path, fault) for fault in error.errors())) from error
    if given.logo is None:
        return given
    return given.model_copy(update={"logo": path.parent / given.logo})


def _text(path: Path) -> str:
    """Return the text of a file that somebody names."""
    try:
        if path.is_file() and path.stat().st_size > MOST_TOML_BYTES:
            step = "Name the file that holds the workshop's name and address."
            got = f"{path} ({path.stat().st_size / 1e6:.1f} MB)"
            raise RequirementError(Problem(FIELD, "a short TOML file", got, step))
        return path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or "not UTF-8 text"
        rule, step = "a TOML file that can be read", "Check its name and folder."
        raise RequirementError(Problem(FIELD, rule, f"{path} ({why})", step)) from error


def _problem(path: Path, fault: ErrorDetails) -> Problem:
    """Return one broken rule of the file in our words."""
    loc = ".".join(str(part) for part in fault["loc"])
    message = fault["msg"].removeprefix("Value error, ")
    got = repr(fault["input"])[:80]
    fields = ", ".join(Identity.model_fields)
    return Problem(f"{path.name}: {loc}", message, got, f"It may hold {fields}.")


def read_logo(path: Path) -> Logo:
    """Return a workshop's mark, refusing what is no picture or far too large.

    Parameters
    ----------
    path : Path
        PNG, JPEG or SVG.

    Returns
    -------
    Logo
        Kind "png", "jpg" or "svg", and the bytes.

    Raises
    ------
    RequirementError
        When it is not such a file.
    """
    try:
        size = path.stat().st_size
        content = path.read_bytes() if size <= MOST_BYTES else b""
    except OSError as error:
        got = f"{path} ({error.strerror})"
        raise RequirementError(
            Problem("logo", "a file that can be read", got, _PICTURE)
        ) from error
    if size > MOST_BYTES:
        got = f"{path.name} ({size / 1e6:.0f} MB)"
        raise RequirementError(Problem("logo", "less than 1 MB", got, _PICTURE))
    return logo_of(path.name, content)


def logo_of(name: str, content: bytes) -> Logo:
    """Return the content of a file as a workshop's mark.

    Parameters
    ----------
    name : str
        Of the file.
    content : bytes
        All of it.

    Returns
    -------
    Logo
        Kind "png", "jpg" or "svg", and the bytes.

    Raises
    ------
    RequirementError
        When it is no picture, or none that can be shown.
    """
    kind = _kind(content)
    if kind is None:
        got = f"{name}, which begins {content[:8]!r}"
        raise RequirementError(Problem("logo", "a picture", got, _PICTURE))
    _seen(name, kind, content)
    return Logo(kind=kind, content=content)


def _seen(name: str, kind: str, content: bytes) -> None:
    """Refuse a picture that begins as one and cannot be shown."""
    import typst  # noqa: PLC0415 - slow to load

    page = b"#let d = json(bytes(sys.inputs.d))\n#image(bytes(d), format: sys.inputs.kind)"
    try:
        typst.compile(
            page,
            font_paths=read(),
            sys_inputs={"d": json.dumps(list(content)), "kind": kind},
        )
    except typst.TypstError as error:
        got = f"{name} ({error.message})"
        raise RequirementError(
            Problem("logo", "a picture that can be shown", got, _PICTURE)
        ) from error


def _kind(content: bytes) -> str | None:
    """Return which kind of picture bytes are, by how they begin."""
    for kind, signature in _SIGNATURES.items():
        if content.startswith(signature):
            return kind
    head = content[:1000].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    drawn = head.startswith((b"<?xml", b"<svg", b"<!--")) and b"<svg" in head
    return "svg" if drawn else None
