"""One part of a batch worked out, whatever becomes of it: the same function on any machine."""

import gc
import traceback
from collections.abc import Mapping
from typing import cast

from catalog import Catalog
from catalog.text import visible
from selector.advice.advise import Advice, advise
from selector.advice.caution import cautions_shown
from selector.advice.headline import headline
from selector.advice.order import reasons
from selector.batch.laid import over
from selector.batch.overlay import Overlay, catalog_of
from selector.batch.program import differing, program
from selector.batch.record import PartOut, Reason
from selector.batch.serving import heats, serving
from selector.batch.task import Task
from selector.decision.output import option_out
from selector.errors import Problem, RequirementError, SelectorError
from selector.record import OptionOut
from selector.requirement import Requirement, requirement_from
from selector.requirement.read import parsed

# So much of a traceback says where an error arose.
_FRAMES = 4


def answered(task: Task, overlay: Overlay, wanted: Mapping[str, str]) -> bytes:
    """Return what becomes of one part, as the JSON that is kept of it.

    Parameters
    ----------
    task : Task
        The part.
    overlay : Overlay
        The user's catalogue files.
    wanted : mapping of str to str
        What the answer must be worked out by, as `program` says where the batch was started.

    Returns
    -------
    bytes
        A `PartOut`: the answer, or the faults of the part or of ours.
    """
    key = task.key(wanted, overlay)
    try:
        _refuse_other_program(wanted)
        out = _answer(key, requirement(task), catalog_of(overlay))
    except SelectorError as error:
        out = _faulty(task, key, str(error))
    except Exception as error:  # noqa: BLE001 - one part never stops the rest
        frames = "".join(traceback.format_exception(error)[-_FRAMES:])
        out = failed(task, key, frames)
    # An advice leaves circles behind, and within it nobody looks for them.
    gc.collect()
    return (out.model_dump_json(indent=1) + "\n").encode()


def _refuse_other_program(wanted: Mapping[str, str]) -> None:
    """Refuse to answer by another program than the one that is asked for."""
    other = differing(dict(wanted), program())
    if other:
        rule = "the same program as where the batch was started"
        raise RequirementError(Problem("worker", rule, other, "Install the same there."))


def requirement(task: Task) -> Requirement:
    """Return the requirement of one part, the fields of its line laid over its file.

    Parameters
    ----------
    task : Task
        The part.

    Returns
    -------
    Requirement
        Validated and frozen.

    Raises
    ------
    RequirementError
        Listing every fault of it.
    """
    if task.faults:
        raise RequirementError(*task.faults)
    data = parsed(task.name, task.content)
    return requirement_from(over(data, task.laid))


def _faulty(task: Task, key: str, text: str) -> PartOut:
    """Return a part whose file or line breaks a rule."""
    return PartOut(key=key, part=task.place, quantity=1, reason="bad_input", text=visible(text))


def failed(task: Task, key: str, text: str) -> PartOut:
    """Return a part that an error of ours left without an answer."""
    return PartOut(key=key, part=task.place, quantity=1, reason="failed", text=visible(text))


def _answer(key: str, asked: Requirement, known: Catalog) -> PartOut:
    """Return the advice on one part, as far as it is kept."""
    advice = advise(asked, known)
    shown = [caution for caution in cautions_shown(advice) if caution.first_screen]
    return PartOut(
        key=key,
        part=asked.part.name,
        quantity=asked.part.quantity,
        reason=cast("Reason", advice.verdict),
        text=headline(advice),
        first=_first(advice),
        cautions=tuple(sorted(shown, key=lambda caution: caution.rank or 0)),
        bars=serving(advice),
        heats=heats(advice),
    )


def _first(advice: Advice) -> OptionOut | None:
    """Return the first option as plain data, where there is one."""
    if not advice.options:
        return None
    option = advice.options[0]
    return option_out(advice.job, option, 1, advice.ranges, reasons(advice, option))
