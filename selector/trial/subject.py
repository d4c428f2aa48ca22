"""What is most uncertain of an option, and so what a trial of it is to settle."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.decision.option import Option
from selector.errors import Problem, RequirementError
from selector.job.job import Job
from selector.job.treatment import FLAMES, Treatment
from selector.option.preparation import prepare
from selector.trial.lasting import Group, Parts, taken_apart
from selector.trial.record import Subject

Floats = NDArray[np.float64]
Quantity = Literal["surface", "depth_mm", "crack_rate"]
New = Literal["bar", "torch", "bath", "oven"]
FIELD = "--new"
OF_NEW: Mapping[New, Subject] = {
    "bar": "bar", "torch": "heat", "bath": "bath", "oven": "temper",
}  # fmt: skip
_BY_GATE: Mapping[str, Quantity] = {
    "hard_enough": "surface",
    "not_too_hard": "surface",
    "depth": "depth_mm",
    "cracking": "crack_rate",
}
# A gate that more samples pass is not what an option fails by. [-]
SAFE = 0.97
WORDS: Mapping[Subject, str] = {
    "bar": "the bar",
    "heat": "the heat",
    "bath": "the bath",
    "temper": "the temper",
    "crack": "whether it cracks",
}
OF_QUANTITY: Mapping[Quantity, str] = {
    "surface": "surface hardness",
    "depth_mm": "depth of hardness",
    "crack_rate": "chance of a quench crack",
}


@dataclass(frozen=True, slots=True, eq=False)
class Question:
    """What a trial asks: its subject, the quantity it is read by, and why."""

    subject: Subject
    quantity: Quantity
    value: Floats
    parts: Parts
    why: str
    asked_for: New | Literal["unproved"] | None = None


def question(job: Job, option: Option, new: New | None = None) -> Question:
    """Return what a trial of an option should settle.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        Predicted and judged.
    new : str, optional
        What the user names as new; else what is most uncertain is found.

    Returns
    -------
    Question
        Of a bar that is not proved, the bar; else the likeliest failure decides what is read,
        and the group of errors that moves it most what is settled.

    Raises
    ------
    RequirementError
        When the option has no such heat, bath or temper.
    """
    work = option.treatment
    quantity = _quantity(option)
    if new is not None:
        _is_there(new, work, option)
        quantity = _read_by(new, option)
    value = _value(option, quantity)
    parts = taken_apart(value, prepare(work, job).normals)
    if new is not None:
        why = f"{_named(new, work)} is new: what it does is not known yet."
        return Question(OF_NEW[new], quantity, value, parts, why, new)
    if quantity == "crack_rate":
        why = "A quench crack is what it fails by most often."
        return Question("crack", quantity, value, parts, why)
    if _is_unproved(work):
        why = f"Nothing proves that the bar in the rack is {work.steel.spoken}."
        return Question("bar", quantity, value, parts, why, "unproved")
    group = _widest(parts, work, option)
    return Question(group, quantity, value, parts, _because(parts, group))


def _quantity(option: Option) -> Quantity:
    """Return what is forecast of an option that it fails by most often."""
    shares = {
        gate.name: gate.share
        for gate in option.judged.gates
        if gate.share is not None and gate.name in _BY_GATE and gate.share < SAFE
    }
    worst = min(shares, key=lambda name: shares[name], default="hard_enough")
    return _BY_GATE[worst]


def _read_by(new: New, option: Option) -> Quantity:
    """Return what a trial of something new is read by: a bath shows in how deep it hardens."""
    prediction = option.judged.prediction
    if new == "bath" and not prediction.hard_through and option.treatment.hardens:
        return "depth_mm"
    quantity = _quantity(option)
    return "surface" if quantity == "crack_rate" else quantity


def _value(option: Option, quantity: Quantity) -> Floats:
    """Return what is forecast, over the samples."""
    prediction = option.judged.prediction
    forecast = {
        "surface": prediction.surface_hrc,
        "depth_mm": prediction.depth_mm,
        "crack_rate": prediction.crack.rate,
    }
    return np.asarray(forecast[quantity], dtype=float)


def _is_unproved(work: Treatment) -> bool:
    """Return whether a bar of the rack is what it is by hearsay alone."""
    return work.steel.kind == "unknown" or (
        work.stock is not None and work.stock.evidence == "none"
    )


def _there(work: Treatment, option: Option) -> tuple[Group, ...]:
    """Return the groups of errors that an option has at all."""
    groups: list[Group] = ["bar"]
    if work.source is not None and work.route.place == "workshop":
        groups.append("heat")
    if work.medium is not None and work.route.place == "workshop":
        groups.append("bath")
    if option.choice.temper.means != "none" and work.route.place == "workshop":
        groups.append("temper")
    return tuple(groups)


def _widest(parts: Parts, work: Treatment, option: Option) -> Group:
    """Return the group that moves a forecast most, of those that the option has."""
    return max(_there(work, option), key=lambda group: parts.share[group])


def _because(parts: Parts, group: Group) -> str:
    """Return why a group is looked at, in words."""
    if parts.share[group] <= 0:
        return "Nothing moves the forecast by itself: the bar is looked at."
    what = {
        "bar": "What the bar holds, and how it answers to heat, moves",
        "heat": "How hot it gets moves",
        "bath": "How fast the bath takes the heat moves",
        "temper": "How far the temper softens moves",
    }[group]
    return f"{what} the forecast most: {100 * parts.share[group]:.0f} in 100 of its spread."


def _named(new: New, work: Treatment) -> str:
    """Return what the user names as new, as the workshop calls it."""
    if new == "torch" and work.source is not None:
        flame = work.source.kind in FLAMES
        return "The torch" if flame else "The furnace"
    return {"bar": "The bar", "torch": "The torch", "bath": "The bath", "oven": "The oven"}[new]


def _is_there(new: New, work: Treatment, option: Option) -> None:
    """Refuse a trial of something that an option does not use here."""
    if OF_NEW[new] in _there(work, option):
        return
    rule = f"something that the option uses in this workshop, as {new!r} is not of {option.id}"
    step = "Leave it out, or name another option."
    raise RequirementError(Problem(FIELD, rule, repr(new), step))
