"""The advice on one terminal page: what to do, how, what else, and what would change it."""

import re
from dataclasses import dataclass, replace
from textwrap import wrap
from typing import TYPE_CHECKING

from rich.markup import escape

from selector.advice.missed import (
    NOTHING_HELPS,
    WHOM_TO_ASK,
    certified_bars,
    nearest_misses,
    rejected_lines,
)
from selector.advice.record import AdviceOut, AlternativeOut
from selector.commands.caution import first_lines, in_full
from selector.commands.full_page import print_whole
from selector.commands.terminal import print_section
from selector.procedure.lines import short_lines
from selector.record import OptionOut, Spread
from selector.wording import (
    chance_words,
    days_words,
    layer_words,
    shown_mm,
    shown_spread,
)

if TYPE_CHECKING:
    from rich.console import Console

# What is not read is not printed: so many lines in all.
MOST_LINES = 60
# Blocks that stand in full further down where everything is printed; no end of lines there.
ALSO_BELOW = frozenset({"Cautions", "Coupon first", "What came nearest", "What binds"})
EVERY = 1000
# Lengths of a record are rounded to this. [mm]
ROUNDED_MM = 0.001
INDENT, FURTHER = 3, 5
# Where a paragraph that is too long is cut: between clauses, never within a reason.
_CLAUSE = re.compile(r"; |\. ")
REST = (
    "The rest: --all (every option, what is out and why, assumptions, cautions in full); "
    "--explain; --json"
)
AS_IT_COMES = {
    "as-bought": "Machine it to size as it comes: nothing to heat, nothing to temper.",
    "prehard": "Machine it to size as it comes: nothing to heat, nothing to temper.",
    "buy-hard-element": "Buy it to size; cut it to length behind a guard and dress the end.",
}


@dataclass(frozen=True, slots=True)
class Block:
    """Paragraphs under a head, at most so many lines of them, and so many a paragraph."""

    head: str
    texts: tuple[str, ...]
    most: int
    each: int = 3
    indent: int = INDENT

    def lines(self, width: int) -> list[str]:
        """Return the paragraphs as lines of a width, what is too long ending in dots."""
        lines: list[str] = []
        for number, text in enumerate(self.texts):
            filled = self._whole_clauses(text, width)
            left = len(self.texts) - number
            if lines and len(lines) + len(filled) + (left > 1) > self.most:
                return [*lines, f"{' ' * self.indent}and {left} more: --all"]
            lines += filled
        return _clipped(lines, self.most, width)

    def _whole_clauses(self, text: str, width: int) -> list[str]:
        """Return one paragraph as lines, what is too long without its last clauses."""
        filled, ends = self._filled(text, width), [m.start() for m in _CLAUSE.finditer(text)]
        while len(filled) > self.each and ends:
            filled = self._filled(f"{text[: ends.pop()]}.", width)
        return _clipped(filled, self.each, width)

    def _filled(self, text: str, width: int) -> list[str]:
        """Return one paragraph as lines, later ones further in."""
        later = " " * (self.indent + FURTHER - INDENT) if self.indent else ""
        return wrap(
            text, width, initial_indent=" " * self.indent, subsequent_indent=later,
            break_on_hyphens=False, break_long_words=False,
        )  # fmt: skip


def _clipped(lines: list[str], most: int, width: int) -> list[str]:
    """Return at most so many lines, the last one ending in dots where more were there."""
    if len(lines) <= most:
        return lines
    last = lines[most - 1]
    while len(last) + 2 > width and " " in last.strip():
        last = last.rsplit(" ", 1)[0]
    return [*lines[: most - 1], f"{last} …"]


def print_all(advice: AdviceOut, out: "Console") -> None:
    """Print the page with nothing cut short, then every option and all that is out.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    """
    out.print(f"[bold]{escape(advice.part)}[/bold]", soft_wrap=True)
    for block in _blocks(advice):
        if block.texts and block.head not in ALSO_BELOW:
            _print_block(replace(block, most=EVERY, each=EVERY), out)
    print_whole(advice, out, titled=False)


def _print_block(block: Block, out: "Console") -> None:
    """Print a block with its head and a blank line after."""
    if block.head:
        out.print(block.head, style="bold")
    out.print("\n".join(block.lines(out.width)), markup=False, soft_wrap=True)
    out.print()


def print_advice(advice: AdviceOut, out: "Console", *, every_caution: bool = False) -> None:
    """Print the advice on one page.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    every_caution : bool
        Whether to print every caution in full after the page.
    """
    out.print(f"[bold]{escape(advice.part)}[/bold]", soft_wrap=True)
    for block in _fitted(_blocks(advice), out.width):
        _print_block(block, out)
    out.print("\n".join(wrap(REST, out.width)), style="dim", soft_wrap=True)
    if every_caution:
        out.print()
        print_section("Cautions, by step of the work", in_full(advice.cautions), out)


def _fitted(blocks: list[Block], width: int) -> list[Block]:
    """Return blocks that fit the page: the longest below the answer loses lines first."""
    kept = [block for block in blocks if block.texts]
    while _length(kept, width) > MOST_LINES - 2:
        longest = max(range(1, len(kept)), key=lambda k: len(kept[k].lines(width)))
        shorter = len(kept[longest].lines(width)) - 1
        if shorter < 1:
            break
        kept[longest] = replace(kept[longest], most=shorter)
    return kept


def _length(blocks: list[Block], width: int) -> int:
    """Return how many lines blocks take, each with its head and a blank line after."""
    return sum(len(block.lines(width)) + bool(block.head) + 1 for block in blocks)


def _blocks(advice: AdviceOut) -> list[Block]:
    """Return the blocks of a page in their order; empty ones are not printed."""
    top = Block("", (advice.headline, *_figures(advice)), 9, 5, 0)
    if advice.verdict == "safety_referral":
        said = first_lines(advice.cautions, stepped=False)
        return [top, *_referral(advice), Block("Cautions", said, 14, 2)]
    first = advice.options[0] if advice.options else None
    nearest = nearest_misses(advice) if advice.verdict == "no_option" else []
    out: list[str] = []
    if advice.verdict == "no_option":
        out = rejected_lines(advice.rejected, set(), coded=False)
    plan = [f"{n}. {step}" for n, step in enumerate(advice.coupon, start=1)]
    coupon = Block("Coupon first", tuple(plan) if first is None else (), 16)
    return [
        top,
        Block("How", procedure_lines(first) if first else (), 7, 4),
        Block("What came nearest", tuple(nearest), 10, 3),
        coupon,
        Block("What binds", tuple(out), 12, 2),
        Block("Instead", _instead(advice), 13, 4),
        Block("On your rack", tuple(_racked(advice)), 8, 2),
        Block("What would change the answer", _changes(advice), 8, 3),
        Block("Cautions", first_lines(advice.cautions, heated=_is_heated(first)), 14, 2),
    ]


def _is_heated(first: OptionOut | None) -> bool:
    """Return whether what stands first goes into any heat."""
    return first is None or first.route_kind not in AS_IT_COMES


def _figures(advice: AdviceOut) -> tuple[str, ...]:
    """Return what comes out of the first option, what it costs, and its id."""
    if not advice.options or advice.verdict == "safety_referral":
        return ()
    first = advice.options[0]
    hard, move = first.hardness, first.movement_mm.p50 or 0.0
    parts = [f"Surface {shown_spread(hard.surface)}"]
    if not hard.through and hard.depth_mm.p50:
        parts[0] += f", hard {hard.depth_mm.p50:.1f} mm deep"
    if shown_spread(hard.core) != shown_spread(hard.surface):
        parts.append(f"core {shown_spread(hard.core)}")
    if shown_spread(hard.shank) not in {shown_spread(hard.core), shown_spread(hard.surface)}:
        parts.append(f"beside it {shown_spread(hard.shank)}")
    if move > 0:
        # What bows further is straightened, just to what is permitted.
        as_far = abs(move - first.permitted_movement_mm) < ROUNDED_MM
        parts.append(f"{'straightened to' if as_far else 'bows'} {shown_mm(move)}")
    money = _money(first.cost.spread, first.cost.currency)
    return (
        f"{'; '.join(parts)}.",
        f"{money} a good part, {days_words(first.days)}. Chief risk: {first.chief_risk}.",
        f"id {first.id}",
    )


def _money(cost: Spread, currency: str) -> str:
    """Return a cost with its range, whole."""
    low, high = f"{cost.p05:.0f}", f"{cost.p95:.0f}"
    return f"{low} {currency}" if low == high else f"{low} to {high} {currency}"


def procedure_lines(option: OptionOut) -> tuple[str, ...]:
    """Return how an option is carried out, in two or three lines.

    Parameters
    ----------
    option : OptionOut
        One option as plain data.

    Returns
    -------
    tuple of str
        Heat and quench, then the temper; how a layer is grown before them.
    """
    grown = [layer_words(option.layer)] if option.layer else []
    lines = [*grown, *short_lines(option.procedure)]
    if not lines and option.route_kind in AS_IT_COMES:
        return (AS_IT_COMES[option.route_kind],)
    return tuple(f"{line[0].upper()}{line[1:].rstrip('.')}." for line in lines)


def _instead(advice: AdviceOut) -> tuple[str, ...]:
    """Return the answers of another kind, then why the kinds that are missing are out."""
    return (*map(_alternative, advice.alternatives), *(f"{text}." for text in advice.barred))


def _alternative(item: AlternativeOut) -> str:
    """Return an alternative in a paragraph: what, cost, work, chance, why not first, risk."""
    # The risk stands last: where a line is cut short, it is what is missed least.
    hours = f"{item.work_h:.1f}".removesuffix(".0") if item.work_h >= 0.1 else "under 0.1"
    return (
        f"{item.kind_words}: {item.bar}: {item.doing}; {item.surface}. "
        f"{_money(item.cost, item.currency)}, {hours} h of your work, {days_words(item.days)}; "
        f"{chance_words(item.passing_all, item.within_budget)}. "
        f"Not first: {item.why_not_first}. Risk: {item.risk}."
    )


def _racked(advice: AdviceOut) -> list[str]:
    """Return the bars of the rack, each with its place or what stopped it."""
    lines = []
    for bar in advice.rack:
        if bar.place == 1:
            lines.append(f"{bar.bar}: first, as above.")
        elif bar.place is not None:
            lines.append(f"{bar.bar}: number {bar.place}: {bar.why}.")
        else:
            stopped = {"unknown": "not judged yet: ", "pass": ""}.get(bar.verdict, "out: ")
            # What gives its place to a near-equal serves, and is not out.
            stopped = stopped if bar.id is None else ""
            lines.append(f"{bar.bar}: {stopped}{bar.why}.")
    return lines


def _changes(advice: AdviceOut) -> tuple[str, ...]:
    """Return what would change the answer; a bar nobody knows wants its coupon to be heated."""
    plan = ("The unknown bar: what a coupon of it shows (the plan stands under --all).",)
    firm = (advice.firm.sentence,) if advice.firm else ()
    lines = (*(change.text for change in advice.changes), *firm, *advice.would_change)
    if advice.verdict == "no_option" and not advice.changes:
        lines = (NOTHING_HELPS, *lines)
    heated = advice.options and advice.verdict != "leave_as_bought"
    return (*(plan if advice.coupon and heated else ()), *lines)


def _referral(advice: AdviceOut) -> list[Block]:
    """Return certified bar that would fit, and whom to ask."""
    return [
        Block("Bar of a fitting kind", certified_bars(advice), 6),
        Block("Whom to ask", (WHOM_TO_ASK,), 3),
    ]
