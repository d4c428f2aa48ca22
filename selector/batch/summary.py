"""The summary of a batch: a line a part, the rack, the loads, and both as files."""

import csv
import io
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence

from selector.batch.load import RULE, loads
from selector.batch.rack import rack
from selector.batch.record import NO_ANSWER, BatchOut, PartOut, RowOut
from selector.batch.task import Task
from selector.wording import shown

SCHEMA_VERSION = 1
# What a spreadsheet would run as a formula.
_FORMULA = ("=", "+", "-", "@", "\t")
# What spoils a part stands with the part.
_HARMS = ("kills", "injures")
_COLUMNS = tuple(name for name in RowOut.model_fields if name != "carried")


def summary(
    tasks: Sequence[Task],
    parts: Mapping[str, PartOut],
    file_of: Callable[[PartOut], str | None],
    loss: float,
) -> BatchOut:
    """Return the summary of a batch.

    Parameters
    ----------
    tasks : sequence of Task
        The parts in their order.
    parts : mapping of str to PartOut
        What became of each, by its place.
    file_of : callable
        Says which file holds the rest of a part.
    loss : float
        How much score a part may lose on the smallest rack. [-]

    Returns
    -------
    BatchOut
        Ready for JSON.
    """
    rows = tuple(_row(task, parts[task.place], file_of(parts[task.place])) for task in tasks)
    ordered = {task.place: parts[task.place] for task in tasks}
    return BatchOut(
        schema_version=SCHEMA_VERSION,
        counts=dict(Counter(row.reason for row in rows)),
        rows=rows,
        rack=rack(ordered, loss),
        load_rule=RULE,
        loads=loads(ordered),
        cautions=_cautions(parts.values()),
    )


def _row(task: Task, part: PartOut, result: str | None) -> RowOut:
    """Return the line of one part."""
    row = RowOut(
        place=task.place,
        part=task.place if part.reason in NO_ANSWER else part.part,
        quantity=part.quantity,
        reason=part.reason,
        text=part.text,
        result=result,
        carried=task.carried,
    )
    first = part.first
    if first is None:
        return row
    hard, cost = first.hardness.surface, first.cost.spread
    within = first.within_budget
    return row.model_copy(
        update={
            "first": f"{first.spoken}, {first.condition}: {first.route_name}",
            "id": first.id,
            "hardness": None if hard.p50 is None else shown(hard.p50),
            "hrc_p05": hard.p05,
            "hrc_p50": hard.p50,
            "hrc_p95": hard.p95,
            "cost": cost.p50,
            "cost_p05": cost.p05,
            "cost_p95": cost.p95,
            "currency": first.cost.currency,
            "right_in_100": round(100.0 * first.passing_all, 2),
            "within_budget_in_100": None if within is None else round(100.0 * within, 2),
            "days": first.days,
        }
    )


def _cautions(parts: Iterable[PartOut]) -> tuple[str, ...]:
    """Return what may kill, blind or injure in any of the work, the worst first, each once."""
    worst: dict[str, tuple[int, int, str]] = {}
    for part in parts:
        for caution in part.cautions:
            if caution.harm in _HARMS:
                rank = (_HARMS.index(caution.harm), caution.rank or 0, caution.brief)
                worst[caution.id] = min(worst.get(caution.id, rank), rank)
    return tuple(brief for *_, brief in sorted(worst.values()))


def as_summed(part: PartOut) -> PartOut:
    """Return a part without what the summary does not hold: thousands are kept in mind.

    Parameters
    ----------
    part : PartOut
        As it is kept in its file.

    Returns
    -------
    PartOut
        Its first option without steps, gates and criteria.
    """
    if part.first is None:
        return part
    none: dict[str, object] = {
        "procedure": (),
        "gates": (),
        "criteria": {},
        "reasons": (),
        "cautions": (),
    }
    return part.model_copy(update={"first": part.first.model_copy(update=none)})


def csv_of(batch: BatchOut) -> str:
    """Return the lines of a batch as CSV, with the columns that the list carried.

    Parameters
    ----------
    batch : BatchOut
        The summary.

    Returns
    -------
    str
        One line a part under one line of heads; no cell is a formula.
    """
    carried = list(dict.fromkeys(name for row in batch.rows for name in row.carried))
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([*_COLUMNS, *map(_cell, carried)])
    for row in batch.rows:
        held = [getattr(row, name) for name in _COLUMNS]
        writer.writerow(map(_cell, [*held, *(row.carried.get(name, "") for name in carried)]))
    return out.getvalue()


def _cell(value: object) -> object:
    """Return a cell that a spreadsheet takes for what it is."""
    if isinstance(value, str) and value.startswith(_FORMULA):
        return f"'{value}"
    return "" if value is None else value
