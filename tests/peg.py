"""A peg to test the usual windows with: one round piece that wears, and ways to vary it."""

from selector.job.usual_window import usual_window
from selector.requirement.zone import Mate
from tests.dog import asked


def peg(wear, severity="light", *, name="peg", impact="light", size=20):
    """Return a peg of one zone as a Requirement."""
    return asked(
        {
            "part.name": name, "part.feature": [],
            "load": {"impact": impact, "cycles": "static"},
            "part.section": [{"shape": "round", "size": size, "length": 60}],
            "zone": [{"section": [1], "wear": wear, "severity": severity}],
        }
    )  # fmt: skip


def with_mate(part, material, wears="mate"):
    """Return the usual window of a part that works on some material."""
    zone = part.zone[0].model_copy(update={"mate": Mate(material=material, should_wear=wears)})
    return usual_window(part, zone)


def plate(name, **more):
    """Return 8 mm of plate under heavy grit."""
    return asked({
        "part.name": name, "part.feature": [], "load": {"impact": "light", "cycles": "static"},
        "part.section": [{"shape": "flat", "size": 8, "width": 100, "length": 300}],
        "zone": [{"section": [1], "wear": "abrasive", "severity": "heavy"}], **more,
    })  # fmt: skip
