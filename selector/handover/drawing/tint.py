"""Letters over a colour: dark ones or white, whichever is told from it better."""

import re

_BOTH = re.compile(r"light-dark\((#\w{6}), (#\w{6})\)")
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
    """Return the colour of letters over a colour, or over a pair of them."""
    if pair := _BOTH.fullmatch(ground):
        light, dark = pair.groups()
        return both(letters_over(light), letters_over(dark))
    return max((DARK_INK, WHITE), key=lambda ink: contrast(ink, ground))


def both(light: str, dark: str) -> str:
    """Return a colour that is one where the ground is light and another where it is dark."""
    return light if light == dark else f"light-dark({light}, {dark})"
