"""The bench card as data: what a stranger needs to do one option, read from its record."""

from collections.abc import Iterable, Mapping, Sequence, Set
from datetime import date
from typing import Any

from catalog.caution import Caution
from selector.handover.chosen import Chosen
from selector.handover.colour_scale import scale_of
from selector.handover.imperial import imperial_card, in_inches
from selector.handover.option_marks import asked_marks, option_marks
from selector.handover.part_block import Sheeted, features, left_on, pictures, sizes
from selector.handover.said_once import said_by_steps
from selector.handover.sheet import Paper
from selector.handover.step_figure import band_words, figure_of, is_hold
from selector.handover.trial_block import trial_block
from selector.option.first_screen import first_screen
from selector.record import OptionOut, StepOut
from selector.wording import condition_words, in_bath, in_sentence, right_words, shown

# The stages of the work as the card groups them.
GROUPS: Mapping[str, str] = {
    "bar": "bar", "prepare": "bar", "order": "order", "set-up": "set", "heat": "heat",
    "case": "heat", "quench": "bath", "test": "bath", "freeze": "bath", "temper": "temper",
    "check": "check", "finish": "check",
}  # fmt: skip
WORST = frozenset({"kills", "injures"})
LOCAL_LAW = "Local codes and licensed trades come first"
NO_TRIALS = "no trials of your own used"
KEPT = ("bar", "file after bath", "after temper", "run-out", "by, on")


def template_of(made_for: Chosen) -> str:
    """Return which template a card takes: steps, or sentences where nothing is hardened."""
    option = made_for.option
    if option is None or option.treatment.route.process == "none":
        return "paragraph"
    return "card"


def card(made_for: Chosen, paper: Paper, today: date, version: str) -> dict[str, Any]:
    """Return the bench card of an option as data for its template.

    Parameters
    ----------
    made_for : Chosen
        The option with its record.
    paper : str
        What it is printed on; the drawing is made for it.
    today : date
        When it is made.
    version : str
        By which version.

    Returns
    -------
    dict
        For the template that `template_of` names.
    """
    on = Sheeted(paper, in_inches(made_for.asked.part))
    foot = [
        _id(made_for),
        f"temperwright {version} · {today.isoformat()} · {NO_TRIALS}",
        LOCAL_LAW,
    ]
    data = {
        "title": made_for.asked.part.name,
        "author": f"temperwright {version}",
        "foot": foot,
    }
    if made_for.record is None or template_of(made_for) == "paragraph":
        made = {**data, **_paragraphs(made_for), "picture": _pictures(made_for, on)[0]}
        return imperial_card(made) if on.inches else made
    record, steps = made_for.record, made_for.record.procedure
    known = made_for.job.catalog.cautions
    top = _dangers(made_for)
    part, drawings, left = made_for.asked.part, _pictures(made_for, on), left_on(steps)
    made = {
        **data,
        "subtitle": _subtitle(made_for, record),
        "comes": shown(record.hardness.surface.p50 or 0.0),
        "where": _where(made_for),
        "chances": right_words(record.passing_all, None),
        "fails": [g.text for g in record.gates if g.verdict in {"fail", "unknown"}],
        "danger_head": _danger_head(known[key].harm for key in top),
        "dangers": [known[key].brief for key in top],
        "picture": drawings[0],
        "smaller": drawings[1:],
        "sizes": sizes(part, made_for.job.leading.sections, left, on),
        "features": features(part, on),
        "groups": _groups(steps, known, top),
        "mends": _mends(steps),
        "trial": trial_block(made_for),
        "kept": list(KEPT),
    }
    return imperial_card(made) if on.inches else made


def _id(made_for: Chosen) -> str:
    """Return the id of the option, or that there is none."""
    return made_for.record.id if made_for.record else "no option"


def _pictures(made_for: Chosen, on: Sheeted) -> list[dict[str, Any]]:
    """Return the drawings of the part, the largest first."""
    job, option = made_for.job, made_for.option
    marks = asked_marks(job) if option is None else option_marks(job, option)
    return pictures(job.asked.part, marks, on)


def _subtitle(made_for: Chosen, record: OptionOut) -> str:
    """Return what is done to what, in a line."""
    count = made_for.asked.part.quantity
    route = in_sentence(in_bath(record.route_name, record.medium))
    bar = f"{record.spoken}, {condition_words(record.condition)}"
    return f"{count} off · {bar} · {route}"


def _where(made_for: Chosen) -> str:
    """Return where that hardness is, and what was asked there."""
    lead = made_for.job.leading
    zone = made_for.asked.zone[lead.zone].name or "working zone"
    band = asked_marks(made_for.job).bands
    asked = f", {band[0].words}" if band and lead.floor_hrc is not None else ""
    return f"on the {zone}{asked}"


def _dangers(made_for: Chosen) -> tuple[str, ...]:
    """Return the cautions of the box at the top: the worst, those that kill or blind first."""
    outcome = None if made_for.option is None else made_for.option.judged.prediction
    known = made_for.job.catalog.cautions
    return tuple(k for k in first_screen(made_for.job, outcome) if known[k].harm in WORST)


def _danger_head(harms: Iterable[str]) -> str:
    """Return what the box at the top warns of."""
    return "Can kill or blind" if "kills" in set(harms) else "Can injure"


def _groups(
    steps: Sequence[StepOut], known: Mapping[str, Caution], top: Sequence[str]
) -> list[dict[str, Any]]:
    """Return the steps in groups of the work; a caution of the box is not said again."""
    groups: list[dict[str, Any]] = []
    unsaid = said_by_steps(steps)
    for step in steps:
        name = GROUPS[step.stage]
        if not groups or groups[-1]["name"] != name:
            groups.append({"name": name, "steps": []})
        groups[-1]["steps"].append(_step(step, known, top, unsaid))
    return groups


def _step(
    step: StepOut, known: Mapping[str, Caution], top: Sequence[str], unsaid: Set[str]
) -> dict[str, Any]:
    """Return one step as the card shows it."""
    cautions = [
        {"text": known[key].brief, "harm": known[key].harm}
        for key in step.cautions
        if key not in top and not (key in unsaid and known[key].harm == "spoils")
    ]
    scale = scale_of(step)
    big, small = figure_of(step, _said_elsewhere(step, shown_by_scale=scale is not None))
    return {
        "number": step.number,
        "action": step.action,
        "big": big,
        "small": small,
        "means": step.means or "",
        "check": step.check or "",
        "cautions": cautions,
        "scale": scale,
    }


def _said_elsewhere(step: StepOut, *, shown_by_scale: bool) -> str:
    """Return what stands beside the figure of a step and need not stand under it again."""
    said = f"{step.action}, {step.means}"
    if is_hold(step):
        # At the heat of the step above.
        said += f", {step.temperature_c or 0.0:.0f} °C, {step.colour}"
    if shown_by_scale and step.band_c is not None:
        said += f", {band_words(step.band_c)}, {step.colour}"
    return said


def _mends(steps: Sequence[StepOut]) -> list[dict[str, Any]]:
    """Return what to do where a step does not come out as it should, by step."""
    return [{"number": step.number, "text": step.otherwise} for step in steps if step.otherwise]


def _paragraphs(made_for: Chosen) -> dict[str, Any]:
    """Return a card of a few sentences: leave it as bought, or leave it to the qualified."""
    asked, record = made_for.asked, made_for.record
    known = made_for.job.catalog.cautions
    if record is None:
        said = [made_for.headline, *made_for.instead]
        said += [known[k].brief for k in _dangers(made_for)]
        return {"subtitle": "No work by this card", "lines": [], "paragraphs": said}
    bar = f"{record.spoken}, {condition_words(record.condition)}"
    minded = [known[k].brief for k in _dangers(made_for)]
    return {
        "subtitle": f"{asked.part.quantity} off · {bar}",
        "lines": [_line(step) for step in record.procedure],
        "paragraphs": ["No heat treatment.", *minded],
    }


def _line(step: StepOut) -> dict[str, Any]:
    """Return a step of a card without heat: what to do, with what, and how it is checked."""
    means, check = step.means or "", step.check or ""
    return {"number": step.number, "action": step.action, "means": means, "check": check}
