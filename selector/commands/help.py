"""What the help of a command says."""

import inspect
from collections.abc import Callable


def help_of(command: Callable[..., object]) -> str:
    """Return what a command does and with which code it ends, from its docstring.

    Parameters
    ----------
    command : callable
        The function of a command.

    Returns
    -------
    str
        Paragraphs, each a line: the terminal breaks them.
    """
    docstring = inspect.cleandoc(command.__doc__ or "")
    does, _, ends = docstring.partition("\n\nRaises\n------\nExit\n")
    paragraphs = [" ".join(part.split()) for part in does.split("\n\n")]
    code = " ".join(ends.split())
    if code and "above" not in code:
        paragraphs.append(f"Exit {code}")
    return "\n\n".join(paragraphs)
