"""The selector: requirement in, advice out.

The public names are loaded on first use, so that `temperwright --help` stays quick.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from selector.advice.advise import Advice, advise
    from selector.requirement import Requirement

__all__ = ["Advice", "Requirement", "advise"]


def __getattr__(name: str) -> Any:  # noqa: ANN401
    """Return a public name from the module that defines it."""
    if name == "Requirement":
        from selector.requirement import Requirement  # noqa: PLC0415

        return Requirement
    if name in {"Advice", "advise"}:
        from selector.advice import advise  # noqa: PLC0415

        return getattr(advise, name)
    msg = f"module 'selector' has no attribute {name!r}"
    raise AttributeError(msg)
