"""Text that is safe to print: nothing in it steers a terminal or turns the reading round.

Names go to terminals, tables, plots, cards and letters, so they are refused where they are read
in. What is refused is echoed in messages; those are made visible where they are printed.
"""

import re

# C0 controls (escape among them), delete and C1; separators of lines and paragraphs;
# embeddings, overrides and isolates of bidirectional text. Marks that scripts need stay.
_STEERING = re.compile("[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069]")
RULE = "one line without control characters"


def is_steady(text: str) -> bool:
    """Return whether a text is one line that leaves a terminal and the reading order alone."""
    return _STEERING.search(text) is None


def visible(text: str) -> str:
    r"""Return a message with all that steers written as its escape; its lines stay lines.

    Parameters
    ----------
    text : str
        A message that may hold what somebody typed or a file held.

    Returns
    -------
    str
        Safe to print.

    Examples
    --------
    >>> print(visible("no steel \x1b[31m"))
    no steel \x1b[31m
    """
    return "\n".join(
        _STEERING.sub(lambda match: ascii(match[0])[1:-1], line) for line in text.split("\n")
    )
