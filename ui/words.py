"""Sentences taken apart for the eye."""

import re

_END = re.compile(r"(?<=[a-z0-9)C])\. (?=[A-Z])")


def first_sentence(text: str) -> tuple[str, str]:
    """Return the first sentence of a text, and the rest.

    Parameters
    ----------
    text : str
        One or more sentences.

    Returns
    -------
    tuple of str
        The first with its stop; the second may be empty.
    """
    found = _END.search(text)
    if found is None:
        return text, ""
    return text[: found.start() + 1], text[found.end() :]
