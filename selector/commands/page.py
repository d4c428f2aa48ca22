"""The advice on a terminal page."""

from collections import Counter
from typing import TYPE_CHECKING

from rich.markup import escape

from selector.explain.hardness import shown_spread
from selector.explain.temper import temper_words
from selector.output_record import AdviceOut, OptionOut, RejectedOut

if TYPE_CHECKING:
    from rich.console import Console

# Gates that turn a treatment down before anything is predicted.
SCREENED = frozenset({"safety", "equipment", "stock", "response", "medium", "shape"})
# Lines of what is out: of what was predicted, and in all.
PREDICTED, SHOWN = 6, 14


def _option_lines(option: OptionOut) -> list[str]:
    """Return one option as lines."""
    medium = f" in {option.medium}" if option.medium else ""
    cost = option.cost.spread
    money = f"{cost.p05:.0f}–{cost.p95:.0f} {option.cost.currency}"
    depth = option.hardness.depth_mm
    deep = "hard through" if option.hardness.through else f"hard to {depth.p50:.1f} mm"
    lines = [
        (
            f"[bold]{option.place}. {escape(option.steel)}[/bold], {option.condition}: "
            f"{escape(option.route_name)}{medium}"
        ),
        f"   temper    {temper_words(option.temper)}",
        f"   surface   {shown_spread(option.hardness.surface)}, {deep}",
        (
            f"   core      {shown_spread(option.hardness.core)}; shank "
            f"{shown_spread(option.hardness.shank)}"
        ),
        f"   risk      {escape(option.chief_risk)}",
        f"   cost      {money} a good part, {option.days:g} days",
        (
            f"   score     {option.score:.2f} ({option.score_p05:.2f}–{option.score_p95:.2f}); "
            f"passes everything in {100 * option.passing_all:.0f} of 100 draws"
        ),
        f"   id        {option.id}",
    ]
    if option.failure_cost is not None and option.failure_cost.p50 is not None:
        lines.insert(
            -2,
            f"   failing   {option.failure_cost.p50:.2f} {option.cost.currency} a part in use",
        )
    narrow = [gate.text for gate in option.gates if gate.verdict == "marginal"]
    if narrow:
        lines.insert(-1, f"   narrow    {escape('; '.join(narrow))}")
    return lines


def _rejected_lines(
    rejected: tuple[RejectedOut, ...], options: set[tuple[str, str]]
) -> list[str]:
    """Return what is out, a line a gate and reason: what was predicted first, then the rest."""
    out: dict[tuple[str, str], Counter[str]] = {}
    for item in rejected:
        if (item.family, item.route) in options:
            continue
        out.setdefault((item.gate, item.text), Counter())[item.steel] += 1
    rows = sorted(out.items(), key=lambda row: -sum(row[1].values()))
    # What was worked out for this part tells more than that there is no furnace.
    predicted = [row for row in rows if row[0][0] not in SCREENED][:PREDICTED]
    screened = [row for row in rows if row[0][0] in SCREENED]
    lines = []
    for (gate, text), steels in [*predicted, *screened][:SHOWN]:
        names = ", ".join(list(steels)[:5]) + (" and others" if len(steels) > 5 else "")
        lines.append(f"   {gate}: {escape(text)} [dim]({escape(names)})[/dim]")
    return lines


def _nearest(found: AdviceOut) -> list[str]:
    """Return the nearest misses where no option is left."""
    near = sorted(found.rejected, key=lambda item: -item.share)[:5]
    return [
        f"   {item.steel} ({item.condition}), {item.route}: {item.text} "
        f"(passes in {100 * item.share:.0f} of 100 draws)"
        for item in near
        if item.share > 0
    ] or ["   nothing comes near: see the gates below"]


def print_advice(found: AdviceOut, out: "Console") -> None:
    """Print the advice.

    Parameters
    ----------
    found : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    """
    out.print(f"[bold]{escape(found.part)}[/bold]")
    out.print(f"{escape(found.headline)}\n")
    for option in found.options:
        out.print("\n".join(_option_lines(option)) + "\n")
    if found.why_first:
        out.print("[bold]Why the first stands before the second[/bold]")
        out.print(f"   {escape(found.why_first)}\n")
    if found.verdict == "no_option":
        out.print("[bold]Nearest misses[/bold]")
        out.print("\n".join(_nearest(found)) + "\n", markup=False)
    kept = {(option.family, option.route) for option in found.options}
    lines = _rejected_lines(found.rejected, kept)
    if lines:
        out.print("[bold]Out, and by which gate[/bold]")
        out.print("\n".join(lines) + "\n")
    _print_lists(found, out)


def _print_lists(found: AdviceOut, out: "Console") -> None:
    """Print what stands apart, coupon plan, other methods, assumptions and cautions."""
    apart = sorted({(item.steel, item.text, item.find_out or "") for item in found.apart})
    if found.coupon and apart:
        out.print("[bold]Apart: cannot be judged yet[/bold]")
        for steel, text, find_out in apart:
            out.print(f"   {steel}: {text}. Find out {find_out}.", markup=False)
        out.print()
    sections = (
        ("Worth knowing", list(found.remarks)),
        ("Coupon first", [f"{n}. {step}" for n, step in enumerate(found.coupon, start=1)]),
        ("Other ways of weighing", _methods(found)),
        ("Assumed", list(found.assumptions)),
        ("Cautions", [f"{item.step}: {item.text} [{item.id}]" for item in found.cautions]),
    )
    for title, lines in sections:
        if lines:
            out.print(f"[bold]{title}[/bold]")
            for line in lines:
                out.print(f"   {line}", markup=False)
            out.print()


def _methods(found: AdviceOut) -> list[str]:
    """Return which other methods would put another option first."""
    return [
        f"{m.method}: " + ("the same first" if m.agrees_on_first else f"first {m.order[0]}")
        for m in found.other_methods
    ]
