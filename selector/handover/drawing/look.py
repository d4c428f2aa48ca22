"""How a drawing looks: its box, its letters, lines and colours, on paper or on a screen."""

from dataclasses import dataclass, replace

from selector.handover.drawing.tint import both

MM_PER_INCH = 25.4
# Either line of an outline takes this share of what is drawn at most. [-]
OUTLINE = 0.1
# Scales that a drawing on paper is made at, largest first; paper to part. [-]
PAPER_SCALES = (10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01)
# On a screen any scale will do, within reason. [px/mm]
SCREEN_SCALES = tuple(24.0 * 0.96**n for n in range(190))


@dataclass(frozen=True, slots=True)
class Look:
    """Everything that is not the part: lengths in the unit of the drawing, mm or px.

    `em` is the height of its letters, `height` the most that the part itself takes. `steps`
    colours hardness from soft to hard, `hot` the hottest a place got; with `hatched` the
    steps are drawn as hatching, closer where harder. Without `places` the features are
    labelled and not sized from the end. `sides` is the room at either side of the side view,
    for sizes, in heights of a letter; with `inches` sizes are in inches.
    """

    unit: str
    width: float
    height: float
    em: float
    outline: float
    thin: float
    scales: tuple[float, ...]
    font: str
    ink: str
    grey: str
    ground: str
    soft: str
    accent: str
    heat: str
    steps: tuple[str, ...]
    hot: tuple[str, ...]
    hatched: bool
    sizes: bool = True
    end_view: bool = True
    strips: bool = True
    places: bool = True
    labels: bool = True
    sides: float = 4.6
    inches: bool = False

    def size(self, value_mm: float) -> str:
        """Return a length as this drawing has it. [mm]."""
        return shown_inches(value_mm) if self.inches else shown_size(value_mm)


def slim(look: Look, tall: float) -> Look:
    """Return a look whose outline leaves in sight what lies inside a part drawn so thin.

    Parameters
    ----------
    look : Look
        As of a stout part.
    tall : float
        How tall the thinnest section is drawn. [px] or [mm], as the look has it.

    Returns
    -------
    Look
        With a finer outline, where the part is thin.
    """
    return replace(look, outline=max(min(look.outline, OUTLINE * tall), 0.5 * look.thin))


def shown_size(value_mm: float) -> str:
    """Return a length as a drawing has it: 28, 6.35, 28.58. [mm]."""
    return f"{value_mm:.2f}".rstrip("0").rstrip(".")


def shown_inches(value_mm: float) -> str:
    """Return a length in inches as a drawing has it: 1.102, 0.0008. [mm]."""
    size = value_mm / MM_PER_INCH
    text = f"{size:.4f}" if size < 0.01 else f"{size:.3f}"
    return text.rstrip("0").rstrip(".")


# The widths of letters are reckoned for the first; the others are little wider.
SANS = (
    "'Source Sans Pro', 'Source Sans 3', 'Segoe UI', 'Liberation Sans', Arial, "
    "'DejaVu Sans Condensed', system-ui, sans-serif"
)
PAPER = Look(
    unit="mm",
    width=194.0,
    height=44.0,
    em=3.0,
    outline=0.5,
    thin=0.2,
    scales=PAPER_SCALES,
    font=SANS,
    ink="#16191d",
    grey="#59626b",
    ground="#ffffff",
    soft="#ffffff",
    accent="#24487a",
    heat="#b0341c",
    steps=("#f0f1f0", "#d0d9e0", "#a9bccd", "#7694b4", "#2f5480", "#0f1f38"),
    hot=("#f6f3f1", "#f3ddd0", "#eebd9f", "#dd8a62", "#b0341c", "#641507"),
    hatched=True,
)
LIGHT = replace(
    PAPER,
    unit="px",
    width=900.0,
    height=200.0,
    em=14.0,
    outline=2.0,
    thin=0.9,
    scales=SCREEN_SCALES,
    soft="#e6e8e6",
    steps=("#e6e8e6", "#d0d9e0", "#a9bccd", "#7694b4", "#2f5480", "#0f1f38"),
    hatched=False,
)
DARK = replace(
    LIGHT,
    ink="#e8eaec",
    grey="#a3abb4",
    ground="#1a1f25",
    soft="#2b3138",
    accent="#a5c6ee",
    heat="#ff8f6d",
    steps=("#2b3138", "#3b4856", "#54708d", "#7b9cbe", "#b3cfec", "#f4f9ff"),
    hot=("#2a2725", "#44352d", "#6b4a38", "#a5623f", "#e0714d", "#ffb59b"),
)

# A visitor may turn from light to dark while the drawing stands there.
SCREEN = replace(
    LIGHT,
    ink=both(LIGHT.ink, DARK.ink),
    grey=both(LIGHT.grey, DARK.grey),
    ground=both(LIGHT.ground, DARK.ground),
    soft=both(LIGHT.soft, DARK.soft),
    accent=both(LIGHT.accent, DARK.accent),
    heat=both(LIGHT.heat, DARK.heat),
    steps=tuple(map(both, LIGHT.steps, DARK.steps)),
    hot=tuple(map(both, LIGHT.hot, DARK.hot)),
)


def for_paper(width_mm: float, height_mm: float) -> Look:
    """Return how a drawing looks on paper, so wide, the part so high at most.

    Parameters
    ----------
    width_mm, height_mm : float
        Of the whole drawing; of the part in it. [mm]

    Returns
    -------
    Look
        In mm, hatched, black.
    """
    return replace(PAPER, width=width_mm, height=height_mm)


def for_screen(width_px: float, height_px: float) -> Look:
    """Return how a drawing looks on a screen, so wide, the part so high at most.

    Parameters
    ----------
    width_px, height_px : float
        Of the whole drawing; of the part in it. [px]

    Returns
    -------
    Look
        In px, filled; light or dark as the page round it.
    """
    return replace(SCREEN, width=width_px, height=height_px)
