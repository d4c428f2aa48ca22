"""Windows of heat and temper against what the eye can tell, on one scale."""

from dataclasses import dataclass

from ui.piece import e

_WIDE, _TALL = 600.0, 96.0
# Of a letter as a phone shows it, where they are larger.
_LETTER = 11.5


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the scale and what it is; `kind` is serves, danger or eye. [°C]."""

    low: float
    high: float
    kind: str
    text: str


def band(low: float, high: float, spans: list[Span], marks: dict[str, float], said: str) -> str:
    """Return a scale of temperature with its windows and marks.

    Parameters
    ----------
    low, high : float
        Ends of the scale. [°C]
    spans : list of Span
        Windows; the eye's error lies under them.
    marks : dict of str to float
        What lies where, above the scale. [°C]
    said : str
        The drawing in a sentence.

    Returns
    -------
    str
        SVG.
    """

    def at(value: float) -> float:
        return _WIDE * min(max((value - low) / (high - low), 0.0), 1.0)

    parts = [f"<rect class='b-rail' x='0' y='38' width='{_WIDE}' height='22'/>"]
    for span in spans:
        left, right = at(span.low), at(span.high)
        wide = max(right - left, 3.0)
        if span.kind == "eye":
            parts.append(
                f"<path class='b-eye' d='M{left:.0f} 64v6h{wide:.0f}v-6'/>"
                + _text(left + wide / 2, 86, span.text)
            )
            continue
        parts.append(
            f"<rect class='b-{span.kind}' x='{left:.0f}' y='38' width='{wide:.0f}' "
            "height='22'/>"
        )
        inside = len(span.text) * _LETTER < wide
        parts.append(
            _text(left + wide / 2, 54 if inside else 86, span.text,
                  f"b-on-{span.kind}" if inside else f"b-by-{span.kind}")
        )  # fmt: skip
    for name, value in marks.items():
        parts.append(
            f"<line class='b-mark' x1='{at(value):.0f}' x2='{at(value):.0f}' y1='32' y2='60'/>"
            + _text(at(value), 25, f"{name} {value:.0f}")
        )  # fmt: skip
    return (
        f"<svg class='tw-band' viewBox='0 0 {_WIDE} {_TALL}' role='img' "
        f"aria-label='{e(said)}'>{''.join(parts)}</svg>"
    )


def _text(x: float, y: float, text: str, kind: str = "b-text") -> str:
    """Return a text in the middle of a place, kept inside the drawing."""
    half = 3.6 * len(text)
    x = min(max(x, half), _WIDE - half)
    return f"<text class='{kind}' x='{x:.0f}' y='{y:.0f}'>{e(text)}</text>"
