"""The windows that are usual for tools and machine parts, by what they do and how they wear.

Common practice; the tables carry no source.
"""

from dataclasses import dataclass

from selector.requirement.trade_name import Trade, trade_window


@dataclass(frozen=True, slots=True)
class Usual:
    """A usual window, and the floor below which the zone does not do its work. [HRC].

    What is bought ready and not hardened for it works from `bought_hrc` on, if that is less.
    """

    low_hrc: float
    high_hrc: float
    floor_hrc: float
    bought_hrc: float | None = None


# Pins and shafts of pre-hardened bar run in bushes everywhere, and wear sooner; who hardens one
# wants it hard.
WINDOW: dict[tuple[str, str], Usual] = {
    ("sliding", "medium"): Usual(51.0, 61.0, 45.0, 24.0),
    ("sliding", "heavy"): Usual(57.0, 62.0, 52.0),
    ("abrasive", "light"): Usual(52.0, 62.0, 45.0),
    ("abrasive", "medium"): Usual(58.0, 63.0, 52.0),
    ("abrasive", "heavy"): Usual(59.0, 64.0, 55.0),
    ("rolling-contact", "light"): Usual(58.0, 63.0, 55.0),
    ("rolling-contact", "medium"): Usual(58.0, 63.0, 56.0),
    ("rolling-contact", "heavy"): Usual(59.0, 63.0, 57.0),
    # Swung, and tempered to purple.
    ("edge-impact", "light"): Usual(54.0, 60.0, 49.0),
    ("edge-impact", "medium"): Usual(53.0, 60.0, 48.0),
    ("edge-impact", "heavy"): Usual(52.0, 58.0, 45.0),
}
# Dogs, pawls, hooks and latches: what takes knocks on a face and has no edge to hold is
# tempered to blue or further. Common practice.
KNOCKED = {
    "light": Usual(45.0, 57.0, 39.0), "medium": Usual(45.0, 57.0, 42.0),
    "heavy": Usual(45.0, 57.0, 42.0),
}  # fmt: skip
# Chisels and punches under the hammer: a little softer than what is swung. Common practice.
HAMMERED = {
    "light": Usual(52.0, 60.0, 47.0), "medium": Usual(51.0, 60.0, 46.0),
    "heavy": Usual(52.0, 58.0, 45.0),
}  # fmt: skip
# Faces of hammers, sets and snaps, which are struck or strike. Common practice.
STRUCK = {
    "light": Usual(46.0, 58.0, 40.0), "medium": Usual(48.0, 58.0, 44.0),
    "heavy": Usual(48.0, 58.0, 44.0),
}  # fmt: skip
# Jaws that turn another part by a slot: thin, they spread if soft and snap if hard. Common
# practice.
JAWS = Usual(44.0, 56.0, 39.0)
# What has no edge to keep in grit wears sooner where it is softer, and does its work: plate
# for wear is 400 to 500 HB. Common practice. [HRC]
PLATE_HRC = 42.0
# A slender point that is bent is let down to purple or blue, or it snaps. Common practice.
BENT_POINT = Usual(50.0, 58.0, 46.0)
# Edges that stand wet are of stainless steel, which is seldom harder. Common practice. [HRC]
WET_EDGE_HRC, WET_EDGE_FLOOR_HRC = 52.0, 46.0
# Punches, dies and shear blades under a press: harder than what is struck by hand, and the
# more so the thinner the work. Common practice.
PRESSED = {
    "light": Usual(58.0, 62.0, 52.0), "medium": Usual(56.0, 61.0, 51.0),
    "heavy": Usual(54.0, 59.0, 50.0),
}  # fmt: skip
# Thin ends that push, set or bead by hand or by a lever: harder than dogs, a little softer than
# punches. Common practice.
TIP = Usual(53.0, 61.0, 47.0)
# What presses on leather, paper or rubber may be softer. Common practice.
PRESSED_SOFT = Usual(54.0, 61.0, 48.0)
# Brake and bending tools are bought pre-hardened too. Common practice. [HRC]
BENDS_HRC = 28.0
# Punches and stakes that are hammered and form by a polished face: softer, it takes dents.
# Common practice.
FORMS = Usual(50.0, 58.0, 45.0)
# What forms or guides steel now and then, or is pressed on hardened steel by more than a hand
# presses, is of pre-hardened bar, or harder. Common practice. [N]
FORMS_LIGHTLY, CLAMPS_N = Usual(28.0, 60.0, 20.0), 1000.0
# Burnishers, spinning tools, flaring cones. Common practice.
RUBS = Usual(57.0, 63.0, 50.0)
# A broad face that is struck and sets what is soft works as it is bought, of medium-carbon bar:
# groovers for tinplate, setts, drifts. It is dressed sooner. Common practice. [HRC]
STRUCK_SOFT_HRC = 5.0
# Mandrels, stakes and blocks that soft metal is formed on are of pre-hardened bar too. Common
# practice. [HRC]
WORKED_UPON_HRC = 26.0
# A shaft runs in bearing metal that is to wear as it is bought, of 190 HB and more. Common
# practice. [HRC]
JOURNAL_HRC = 10.0
# A bush that is to be renewed is of pre-hardened bar. Common practice. [HRC]
PREHARD_HRC = 24.0
# Pinions that drive brass wheels without end, as in clocks: polished more than hard. Common
# practice.
PINION_IN_BRASS = Usual(48.0, 60.0, 40.0)
# Screws that press by their end or run in a nut: a harder thread snaps at its root. Of
# pre-hardened bar in presses and vices. Common practice.
PRESSES_BY_THREAD = Usual(46.0, 60.0, 40.0, 28.0)
# The knife edges of balances rock on stone, and are as hard as they can be. Common practice.
ON_STONE = Usual(59.0, 65.0, 55.0)
# Gauges and setting pieces: hard, as a face that wears by a hundredth is worn out. Common
# practice.
GAUGE = Usual(58.0, 64.0, 55.0)
# What bears nothing and is ground true, and is called no gauge: pilots, arbors, aligning bars.
# Common practice.
GROUND_TRUE = Usual(54.0, 64.0, 48.0)
# Dies and tools that work hotter than this: harder steel cracks in the heat. Common practice.
# [°C]
HOT_C = 300.0
HOT = Usual(42.0, 52.0, 38.0)
# Flat and coiled springs by the thickness of their section: thin strip is run harder.
# Common practice of spring makers, no source. [mm], [HRC]
SPRING = (
    (1.5, Usual(46.0, 52.0, 42.0)), (6.0, Usual(44.0, 50.0, 41.0)),
    (float("inf"), Usual(42.0, 48.0, 40.0)),
)  # fmt: skip


def of_trade(trade: Trade) -> Usual:
    """Return the window that a trade runs its tools at."""
    window = trade_window(trade)
    return Usual(window.low_hrc, window.high_hrc, window.floor_hrc)


def usual_spring(thick_mm: float) -> Usual:
    """Return the usual window of a spring by the thickness of its section."""
    return next(usual for most_mm, usual in SPRING if thick_mm <= most_mm)
