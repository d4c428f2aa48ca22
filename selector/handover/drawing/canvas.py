"""What is drawn on: SVG elements, and which places they take, so that no text meets another."""

from dataclasses import dataclass, field
from html import escape

from selector.handover.drawing.look import Look
from selector.handover.drawing.strokes import Stroke, crosses, strokes_of
from selector.handover.drawing.tint import letters_over

# Widths of letters by kind, in ems: of Source Sans, a little over. [-]
_NARROW, _WIDE, _CAPITAL, _USUAL = 0.31, 0.87, 0.64, 0.55
_NARROW_LETTERS = frozenset("iljtfrI.,:;'|!()[] -·")
_WIDE_LETTERS = frozenset("mwMW@%–—→")
BOLD = 1.06
# Hatching where it is hard enough, and where hardness falls off. [em]
HATCH_CLOSE, HATCH_WIDE, HATCH_LINE = 0.45, 0.85, 0.14
# Of a line of text from its foot: up to the capitals, down to the tails. [em]
OVER, UNDER = 0.72, 0.22


@dataclass(frozen=True, slots=True)
class Box:
    """A place on the drawing."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box", pad: float = 0.0) -> bool:
        """Return whether two places share some, or come nearer than `pad`."""
        return (
            self.left < other.right + pad
            and other.left < self.right + pad
            and self.top < other.bottom + pad
            and other.top < self.bottom + pad
        )


def text_width(text: str, em: float, *, bold: bool = False) -> float:
    """Return about how wide a line of text is, rather too wide than too narrow.

    Parameters
    ----------
    text : str
        The line.
    em : float
        Height of its letters, in the unit of the drawing.
    bold : bool
        Whether it is bold.

    Returns
    -------
    float
        Width, in the unit of the drawing.
    """
    ems = 0.0
    for letter in text:
        if letter in _NARROW_LETTERS:
            ems += _NARROW
        elif letter in _WIDE_LETTERS or ord(letter) > 0x2E80:
            ems += _WIDE if ord(letter) < 0x2E80 else 1.05
        elif letter.isupper():
            ems += _CAPITAL
        else:
            ems += _USUAL
    return ems * em * (BOLD if bold else 1.0)


def number(value: float) -> str:
    """Return a length as SVG takes it, to a thousandth."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


@dataclass(frozen=True, slots=True)
class Type:
    """How a line of text is set: size in ems, where it is held, colour, ground behind it."""

    size: float = 1.0
    anchor: str = "start"
    bold: bool = False
    colour: str | None = None
    grounded: bool = False
    turned: bool = False


PLAIN = Type()


@dataclass(slots=True)
class Canvas:
    """The elements of a drawing in order, the boxes of its texts, and where its lines run.

    `lines` are places that no text may stand on, `strokes` the lines themselves, `tints` what
    is filled with which colour. No text is tried beyond `edge`, which the side view sets where
    the end view begins.
    """

    look: Look
    key: str
    elements: list[str] = field(default_factory=list)
    texts: list[Box] = field(default_factory=list)
    lines: list[Box] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    tints: list[tuple[Box, str]] = field(default_factory=list)
    low: float = 0.0
    edge: float = 0.0

    def __post_init__(self) -> None:
        self.edge = self.look.width

    def add(self, element: str) -> None:
        """Add an element that takes no place."""
        self.elements.append(element)

    def take(self, box: Box) -> None:
        """Take a place that no text may stand on."""
        self.lines.append(box)

    def reach(self, y: float) -> None:
        """Make the drawing reach down to a height."""
        self.low = max(self.low, y)

    def line(
        self, x1: float, y1: float, x2: float, y2: float, colour: str | None = None,
        style: str = "",
    ) -> None:  # fmt: skip
        """Draw a thin line and take its place."""
        a, b, c, d = (number(v) for v in (x1, y1, x2, y2))
        stroke = colour or self.look.ink
        self.add(
            f'<line x1="{a}" y1="{b}" x2="{c}" y2="{d}" stroke="{stroke}" '
            f'stroke-width="{number(self.look.thin)}"{style}/>'
        )
        self.lines.append(Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)))

    def path(self, d: str, *, stroke: float = 0.0, fill: str = "none", style: str = "") -> None:
        """Draw a path; nothing where it is empty."""
        if not d:
            return
        line = (
            f' stroke="{self.look.ink}" stroke-width="{number(stroke)}" stroke-linejoin="round"'
            if stroke and "stroke=" not in style
            else ""
        )
        self.add(f'<path d="{d}" fill="{fill}"{line}{style}/>')
        if stroke or "stroke=" in style:
            self.strokes += strokes_of(d)

    def tint(self, box: Box, colour: str) -> None:
        """Fill a place with a colour."""
        x, y = number(box.left), number(box.top)
        wide, high = number(max(box.right - box.left, 0.0)), number(box.bottom - box.top)
        self.add(f'<rect x="{x}" y="{y}" width="{wide}" height="{high}" fill="{colour}"/>')
        self.tints.append((box, colour))

    def letters_over(self, box: Box) -> str | None:
        """Return the colour of letters over all that a place is filled with, None of two."""
        inks = {letters_over(colour) for under, colour in self.tints if under.meets(box)}
        return inks.pop() if len(inks) == 1 else None

    def box_of(self, text: str, x: float, y: float, how: Type = PLAIN) -> Box:
        """Return what place a line of text takes, its foot at `y`."""
        em = how.size * self.look.em
        wide = text_width(text, em, bold=how.bold)
        before = {"start": 0.0, "middle": 0.5 * wide, "end": wide}[how.anchor]
        if how.turned:  # reads upwards, its foot at the right
            after = wide - before
            return Box(x - OVER * em, y - after, x + UNDER * em, y + before)
        return Box(x - before, y - OVER * em, x - before + wide, y + UNDER * em)

    def is_free(self, box: Box, *, lines: bool = True) -> bool:
        """Return whether a place is on the drawing and taken by nothing."""
        if box.left < 0.0 or box.right > self.edge:
            return False
        pad = 0.12 * self.look.em
        taken = (*self.texts, *(self.lines if lines else ()))
        if any(box.meets(other, pad) for other in taken):
            return False
        low, high = (box.left - pad, box.top - pad), (box.right + pad, box.bottom + pad)
        return not (lines and any(crosses(stroke, low, high) for stroke in self.strokes))

    def text(self, text: str, x: float, y: float, how: Type = PLAIN) -> None:
        """Write a line of text with its foot at `y` and take its place."""
        em, box = how.size * self.look.em, self.box_of(text, x, y, how)
        if how.grounded:
            self.add(
                f'<rect x="{number(box.left - 0.2 * em)}" y="{number(box.top - 0.1 * em)}" '
                f'width="{number(box.right - box.left + 0.4 * em)}" '
                f'height="{number(box.bottom - box.top + 0.2 * em)}" '
                f'fill="{self.look.ground}"/>'
            )
        bold = ' font-weight="700"' if how.bold else ""
        turn = f' transform="rotate(-90 {number(x)} {number(y)})"' if how.turned else ""
        anchor = f' text-anchor="{how.anchor}"' if how.anchor != "start" else ""
        self.add(
            f'<text x="{number(x)}" y="{number(y)}" font-size="{number(em)}" '
            f'fill="{how.colour or self.look.ink}"{anchor}{bold}{turn}>{escape(text)}</text>'
        )
        self.texts.append(box)
        self.reach(box.bottom)

    def try_text(self, text: str, x: float, y: float, how: Type = PLAIN) -> bool:
        """Write a line of text if its place is free, and say whether it was."""
        if not self.is_free(self.box_of(text, x, y, how)):
            return False
        self.text(text, x, y, how)
        return True

    def fitted(self, text: str, wide: float, how: Type = PLAIN) -> str:
        """Return as much of a line as is not too wide, with an ellipsis where it was cut."""
        em = how.size * self.look.em
        if text_width(text, em, bold=how.bold) <= wide:
            return text
        while text and text_width(f"{text}…", em, bold=how.bold) > wide:
            text = text[:-1]
        return f"{text.rstrip()}…" if text else ""


def hatches(canvas: Canvas) -> str:
    """Return the two hatchings, their ids the drawing's own."""
    em, made = canvas.look.em, []
    for name, every in (("hard", HATCH_CLOSE), ("soft", HATCH_WIDE)):
        gap = number(every * em)
        made.append(
            f'<pattern id="{canvas.key}-{name}" width="{gap}" height="{gap}" '
            f'patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
            f'<line x1="0" y1="0" x2="0" y2="{gap}" stroke="{canvas.look.ink}" '
            f'stroke-width="{number(HATCH_LINE * em)}"/></pattern>'
        )
    return f"<defs>{''.join(made)}</defs>"
