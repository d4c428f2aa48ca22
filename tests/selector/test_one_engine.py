"""One simulation: whatever asks, of whichever steels, an option has one set of numbers."""

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.flame.answer import flame_answer
from selector.flame.output import flame_out
from selector.requirement import requirement_from
from tests.dog import only, varied

OWN = {"min": "50 HRC", "max": "60 HRC"}


def part(shape="round", size=16, hard=25, rest=120, **more):
    """A plain part with a hard end, or hard all over where nothing follows the end."""
    sections = [{"shape": shape, "size": size, "length": hard, **more}]
    sections += [{"shape": shape, "size": size, "length": rest, **more}] * bool(rest)
    return {
        "part.section": sections,
        "part.feature": [],
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium", "hardness": OWN}],
        "load.torque": "1 N m",
        "workshop.bath": [{"medium": "water"}, {"medium": "oil"}],
    }


PARTS = {
    "round 4": part(size=4, hard=12, rest=40),
    "round 8": part(size=8),
    "round 12": part(size=12),
    "round 16": part(size=16),
    "round 20": part(size=20),
    "round 28": part(size=28),
    "round 40": part(size=40, hard=30),
    "square 14": part("square", 14),
    "hexagon 17": part("hexagon", 17),
    "tube 24": part("tube", 24, bore=10),
    "flat 8 x 30": part("flat", 8, width=30),
    "whole round 12": part(size=12, hard=40, rest=0),
    "whole flat": part("flat", 6, hard=60, rest=0, width=25),
    "disc": part(size=40, hard=12, rest=0),
}
STEELS = ("115CrV3", "C105U", "100MnCrW4", "C45", "C60", "42CrMo4")
CATALOG = only(*(steel.lower() for steel in STEELS))
# Three steels a part, so that each steel meets every kind of part.
CASES = [
    pytest.param(
        name,
        STEELS[(3 * n + k) % len(STEELS)],
        id=f"{name}, {STEELS[(3 * n + k) % len(STEELS)]}",
    )
    for n, name in enumerate(PARTS)
    for k in range(3)
]


@pytest.mark.parametrize(("name", "steel"), CASES)
def test_both_commands_give_one_answer(name, steel, monkeypatch):
    # What single change would help is no part of the option, and half of the work.
    monkeypatch.setattr("selector.flame.answer.first_change", lambda *_: None)
    asked = requirement_from(varied(PARTS[name]))
    torch = "through-torch" if len(asked.part.section) == 1 else "local-torch"
    advice = advice_out(advise(asked, CATALOG, steel=steel, route=torch))
    flame = flame_out(flame_answer(asked, CATALOG, steel))
    if not advice.options:
        assert flame.verdict in {"no", "coupon_first", "not_needed"}
        return
    ours, theirs = advice.options[0], flame.families[0].option
    assert theirs.id == ours.id
    assert theirs.family == ours.family
    assert theirs.set_up == ours.set_up
    assert theirs.temper == ours.temper
    assert theirs.cautions == ours.cautions
    for field in ("surface", "core", "depth_mm"):
        mine, other = getattr(ours.hardness, field), getattr(theirs.hardness, field)
        assert other.p50 == pytest.approx(mine.p50, abs=1e-9)
    assert theirs.movement_mm.p50 == pytest.approx(ours.movement_mm.p50, abs=1e-9)
    # The map is that of the middle heat, and the samples lie about it.
    at = int(np.argmin(np.abs(np.array(flame.map.along_mm) - 0.5 * sum(flame.map.zone_mm))))
    core = flame.map.core_hrc[at]
    assert ours.hardness.core.p05 - 3.0 <= core <= ours.hardness.core.p95 + 3.0
