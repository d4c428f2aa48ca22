"""What a card does not say twice: cautions that a step of it says in its own words already."""

from collections.abc import Mapping, Sequence, Set

from selector.record import StepOut

# Of cautions that spoil the part alone, the words of a step that say the same: where the figure
# is, and what to do where it is missed.
SAID_BY: Mapping[str, tuple[str, ...]] = {
    "sharp-notch-quench": ("every edge",),
    "shield-the-flame": ("out of the wind", "length of pipe", "in the heart of it"),
    "curie-not-target": ("where the magnet lets go",),
    "overheated-grain": ("too hot: let it go black",),
    "soak-rule-furnace-only": ("longer burns the carbon off",),
    "keep-moving-at-water-line": ("keep it moving", "so that no line stands"),
    "quench-enter-edge-first": ("straight down",),
    "straighten-warm": ("straighten",),
    "plug-holes": ("Pack the",),
    "temper-by-zone": ("watch the colours run",),
}
# No part of one even heat is tempered further than the rest.
EVEN = ("furnace", "oven", "salt")


def said_by_steps(steps: Sequence[StepOut]) -> Set[str]:
    """Return the cautions that no step of a card repeats.

    Parameters
    ----------
    steps : sequence of StepOut
        The procedure on the card.

    Returns
    -------
    set of str
        Ids of cautions.
    """
    said = " ".join(f"{s.action} {s.check or ''} {s.otherwise or ''}" for s in steps)
    # The foot has the local codes. What is left for the grinder is a step of its own; who
    # cannot finish hard steel makes the part to size.
    unsaid = {"local-codes", "finish-after-heat"}
    unsaid |= {key for key, words in SAID_BY.items() if any(text in said for text in words)}
    tempers = [step for step in steps if step.stage == "temper"]
    if all(any(word in (step.means or "") for word in EVEN) for step in tempers):
        unsaid.add("temper-by-zone")
    return unsaid
