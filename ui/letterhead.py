"""Who signs what goes to the customer: asked once a workshop, and kept with it."""

from base64 import b64decode, b64encode
from typing import Any

import streamlit as st
from pydantic import ValidationError

from selector.errors import RequirementError
from selector.handover.identity import Identity, Logo, logo_of
from selector.handover.letter.made import Sender
from ui import held, session, store
from ui.labels import plain

_LINES = ("name", "phone", "mail", "signs")
_BLOCKS = ("address", "terms")
_MARK = ("name", "kind", "content")
_PICTURES = ["png", "jpg", "jpeg", "svg"]


def ask() -> None:
    """Ask for the letterhead of the workshop at hand; all of it may stay blank."""
    shop = session.here().shop or ""
    kept = _kept(shop)
    wrong = faults(kept)
    with st.container(horizontal=True):
        for field in _LINES:
            _ask(st.text_input, shop, field, kept.get(field) or "", wrong)
    with st.container(horizontal=True):
        for field in _BLOCKS:
            _ask(st.text_area, shop, field, "\n".join(map(str, kept.get(field, ()))), wrong)
    _ask_mark(shop, kept)


def _kept(shop: str) -> dict[str, Any]:
    """Return the letterhead of a workshop, without what is not of the kind it was kept as."""
    kinds: dict[str, type] = dict.fromkeys(_LINES, str) | dict.fromkeys(_BLOCKS, list)
    given = store.letterhead(shop)
    sound = {
        field: given[field] for field in kinds if isinstance(given.get(field), kinds[field])
    }
    mark = given.get("logo")
    if isinstance(mark, dict) and all(isinstance(mark.get(name), str) for name in _MARK):
        sound["logo"] = mark
    return sound


def _ask(widget: Any, shop: str, field: str, value: str, wrong: dict[str, str]) -> None:  # noqa: ANN401
    """Ask for one line or block of it."""
    key = held.filled(f"letterhead/{shop}/{field}", value)
    about = Identity.model_fields[field]
    with st.container(width=300 if field in _LINES else 560, gap=None):
        widget(about.title, key=key, on_change=_keep, args=(shop, field, key), max_chars=2400)
        if field in wrong:
            st.markdown(f":red[{plain(wrong[field])}]")
        elif about.description and not value:
            st.caption(about.description)


def _ask_mark(shop: str, kept: dict[str, Any]) -> None:
    """Ask for the mark beside the address."""
    about = Identity.model_fields["logo"]
    if "logo" in kept:
        with st.container(horizontal=True, vertical_alignment="center"):
            st.markdown(f"**{about.title}**: {plain(kept['logo']['name'])}")
            st.button(
                "Remove the mark", key="letterhead/drop", type="tertiary",
                on_click=_put, args=(shop, "logo", None),
            )  # fmt: skip
        return
    key = f"letterhead/{shop}/logo"
    st.file_uploader(
        f"{about.title}: {about.description}", type=_PICTURES, key=key, width=560,
        on_change=_keep_mark, args=(shop, key),
    )  # fmt: skip
    for text in held.told(key):
        st.error(plain(text))


def _keep(shop: str, field: str, key: str) -> None:
    """Keep what was answered."""
    lines = [line.strip() for line in str(held.value_of(key)).splitlines() if line.strip()]
    _put(shop, field, " ".join(lines) if field in _LINES else lines)


def _keep_mark(shop: str, key: str) -> None:
    """Keep a picture as the mark, or why it was not taken."""
    given = held.value_of(key)
    if given is None:
        return
    try:
        logo = logo_of(given.name, given.getvalue())
    except RequirementError as error:
        held.tell(key, [str(problem) for problem in error.problems])
        return
    content = b64encode(logo.content).decode()
    _put(shop, "logo", {"name": given.name, "kind": logo.kind, "content": content})


def _put(shop: str, field: str, value: object) -> None:
    """Keep one answer with the others of its workshop; a blank one is removed."""
    kept = {**_kept(shop), field: value}
    store.keep_letterhead(shop, {name: given for name, given in kept.items() if given})


def faults(kept: dict[str, Any]) -> dict[str, str]:
    """Return what is wrong with a letterhead, by field; nothing is where all is blank.

    Parameters
    ----------
    kept : dict
        As it is kept.

    Returns
    -------
    dict
        A sentence each.
    """
    given = {name: value for name, value in kept.items() if name != "logo"}
    if not kept:
        return {}
    try:
        Identity.model_validate({"name": "", **given})
    except ValidationError as error:
        return {
            str(fault["loc"][0]): _said(fault["msg"], fault["loc"]) for fault in error.errors()
        }
    return {}


def _said(message: str, place: tuple[int | str, ...]) -> str:
    """Return one broken rule in words."""
    if place == ("name",) and "at least 1" in message:
        return "A letterhead begins with a name."
    line = f"line {int(place[1]) + 1}: " if len(place) > 1 else ""
    return f"Not taken: {line}{message.removeprefix('Value error, ')}."


def sender(shop: str | None) -> tuple[Sender, str]:
    """Return who writes for a workshop, and why nobody does where its letterhead is faulty.

    Parameters
    ----------
    shop : str or None
        Name of the workshop; None of one without a name.

    Returns
    -------
    tuple of Sender and str
        The second mostly empty.
    """
    kept = _kept(shop or "")
    if not kept or faults(kept):
        return Sender(), " ".join(faults(kept).values())
    mark = kept.pop("logo", None)
    logo = mark and Logo(kind=mark["kind"], content=b64decode(mark["content"]))
    return Sender(Identity.model_validate(kept), logo), ""
