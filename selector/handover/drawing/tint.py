"""Letters over a colour: dark ones or white, whichever is told from it better."""

DARK_INK, WHITE = "#16191d", "#ffffff"


def luminance(colour: str) -> float:
    """Return how light a colour is, 0 to 1, as WCAG 2.2 has it ("relative luminance"). [-]."""
    shares = (int(colour[k : k + 2], 16) / 255.0 for k in (1, 3, 5))
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4
        for share in shares
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast of two colours, 1 to 21, as WCAG 2.2 has it. [-]."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def letters_over(ground: str) -> str:
    """Return the colour of letters over a colour."""
    return max((DARK_INK, WHITE), key=lambda ink: contrast(ink, ground))
