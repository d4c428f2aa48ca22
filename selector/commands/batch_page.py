"""The page of `temperwright batch`: what became of the parts, the rack, the loads."""

from typing import TYPE_CHECKING

from selector.commands.terminal import print_paragraph, print_rows, print_section
from selector.wording import condition_words, in_100, means_words

if TYPE_CHECKING:
    from rich.console import Console

    from selector.batch.record import BarOut, BatchOut, LoadOut, RowOut
    from selector.batch.run import Batch

# More lines than these stand in the table alone.
_ROWS, _FAULTS, _NAMED = 20, 10, 6
_WORDS = {
    "harden": "to be hardened",
    "leave_as_bought": "left as bought",
    "toss_up": "with two level options",
    "safety_referral": "for qualified people",
    "coupon_first": "after a coupon",
    "no_option": "without an option",
    "bad_input": "with a faulty file or line",
    "failed": "without an answer by an error of ours",
}


def print_batch(done: "Batch", out: "Console") -> None:
    """Print a batch on a page or two; all of it is in the files it names.

    Parameters
    ----------
    done : Batch
        What was done and where it was written.
    out : Console
        Where to.
    """
    batch = done.out
    counts = ", ".join(
        f"{batch.counts[reason]} {words}"
        for reason, words in _WORDS.items()
        if reason in batch.counts
    )
    out.print(f"{len(batch.rows)} parts: {counts}. {done.new} worked out now.", style="bold")
    out.print()
    _print_rows([row for row in batch.rows if row.id is not None], out)
    _print_without(batch, out)
    _print_rack(batch, out)
    print_section("Loads to share", map(_load, batch.loads), out)
    cautions = list(batch.cautions[:_NAMED])
    if cautions:
        cautions.append("All of a part: temperwright advise PART.toml --cautions all")
    print_section("Cautions", cautions, out)
    for path in done.written:
        out.print(f"Written: {path}", markup=False, soft_wrap=True)


def _print_rows(rows: "list[RowOut]", out: "Console") -> None:
    """Print the first parts that have an option, one a line."""
    if not rows:
        return
    heads = ("part", "hardness", "cost", "right", "first choice")
    print_rows(heads, map(_cells, rows[:_ROWS]), out)
    if len(rows) > _ROWS:
        print_paragraph(f"{len(rows) - _ROWS} more parts are in the table.", out)
        out.print()


def _cells(row: "RowOut") -> tuple[str, ...]:
    """Return the cells of one part."""
    cost = "" if row.cost is None else f"{row.cost:.0f} {row.currency}"
    right = "" if row.right_in_100 is None else in_100(row.right_in_100 / 100)
    return (row.place[:40], row.hardness or "", cost, right, row.first or "")


def _print_without(batch: "BatchOut", out: "Console") -> None:
    """Print why parts have no option: faults first."""
    order = ("failed", "bad_input", "no_option", "coupon_first", "safety_referral")
    for reason in order:
        rows = [row for row in batch.rows if row.reason == reason]
        lines = [f"{row.place}: {' '.join(row.text.split())}" for row in rows[:_FAULTS]]
        if len(rows) > _FAULTS:
            lines.append(f"{len(rows) - _FAULTS} more are in the table.")
        print_section(_WORDS[reason].capitalize(), lines, out)


def _print_rack(batch: "BatchOut", out: "Console") -> None:
    """Print the fewest bars that serve all parts."""
    rack = batch.rack
    if not rack.bars:
        return
    count = len(rack.bars)
    few = "The fewest" if rack.fewest else "Few"
    served = sum(len(bar.serves) for bar in rack.bars)
    head = f"{few} bars that serve {served} parts within {rack.loss:g} of the score: {count}"
    print_section(head, map(_bar, rack.bars), out)


def _bar(bar: "BarOut") -> str:
    """Return one bar with what it serves."""
    sizes = ", ".join(f"{size:g}" for size in bar.thickest_mm[:_NAMED])
    more = " …" if len(bar.thickest_mm) > _NAMED else ""
    count, most = len(bar.serves), max(served.loss for served in bar.serves)
    lost = f", at most {most:.2f} of a score lost" if most >= 0.005 else ""
    return (
        f"{bar.spoken}, {condition_words(bar.condition)}: {count} part{'s' * (count > 1)}, "
        f"thickest {sizes}{more} mm{lost}"
    )


def _load(load: "LoadOut") -> str:
    """Return one load with its parts."""
    named = ", ".join(load.places[:_NAMED])
    more = f" and {len(load.places) - _NAMED} more" if len(load.places) > _NAMED else ""
    heat = f"{load.temperature_c:.0f} °C, {load.hold_min:.0f} min"
    if load.kind == "harden":
        return f"Harden at {heat} ({load.by}), then {load.then}: {named}{more}"
    means = means_words(load.by)
    return f"Temper at {heat}, {load.then}, {means}: {named}{more}"
