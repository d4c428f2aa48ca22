"""The whole advice on the terminal: every option shown, all that is out, every caution."""

from typing import TYPE_CHECKING

from rich.markup import escape

from selector.advice.missed import UNHARDENED, nearest_misses, rejected_lines
from selector.advice.record import AdviceOut, MethodOut
from selector.commands.caution import in_full
from selector.commands.firm_page import firm_lines
from selector.commands.terminal import print_figure, print_section
from selector.procedure.lines import short_lines
from selector.record import OptionOut
from selector.wording import (
    condition_words,
    days_words,
    in_bath,
    layer_words,
    right_words,
    shown_spread,
    temper_words,
)

if TYPE_CHECKING:
    from rich.console import Console

# A smaller cost of failures in use, a part, is not worth a line.
LEAST_FAILING = 1.0


def _rows(option: OptionOut) -> list[tuple[str, str]]:
    """Return the figures of one option, each with its name."""
    cost = option.cost.spread
    money = f"{cost.p05:.0f}–{cost.p95:.0f} {option.cost.currency}"
    depth, failing = option.hardness.depth_mm, option.failure_cost
    places = 2 if option.layer else 1
    deep = "hard through" if option.hardness.through else f"hard to {depth.p50:.{places}f} mm"
    core, shank = (shown_spread(s) for s in (option.hardness.core, option.hardness.shank))
    rows = [
        *([("layer", layer_words(option.layer))] if option.layer else []),
        *(("do", line) for line in short_lines(option.procedure)),
        ("temper", temper_words(option.temper)),
        ("surface", f"{shown_spread(option.hardness.surface)}, {deep}"),
        ("core", f"{core}; shank {shank}"),
        ("risk", option.chief_risk),
        ("cost", f"{money} a good part, {days_words(option.days)}"),
    ]
    if failing is not None and failing.p50 is not None and failing.p50 >= LEAST_FAILING:
        rows.append(("failing", f"{failing.p50:.0f} {option.cost.currency} a part in use"))
    score = f"{option.score:.2f} ({option.score_p05:.2f}–{option.score_p95:.2f})"
    passing = right_words(option.passing_all, option.within_budget)
    rows.append(("score", f"{score}; {passing}"))
    narrow = [
        gate.text
        for gate in option.gates
        if gate.verdict == "marginal" and gate.text != option.chief_risk
    ]
    if narrow:
        rows.append(("narrow", "; ".join(narrow)))
    return [*rows, ("id", option.id)]


def _print_option(option: OptionOut, out: "Console") -> None:
    """Print one option of the short list."""
    route = in_bath(option.route_name, option.medium)
    out.print(
        f"[bold]{option.place}. {escape(option.spoken)}[/bold], "
        f"{condition_words(option.condition)}: {escape(route)}"
    )
    for name, text in _rows(option):
        print_figure(name, text, out)
    out.print()


def print_whole(advice: AdviceOut, out: "Console", *, titled: bool = True) -> None:
    """Print the whole advice.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    titled : bool
        Whether part and headline are printed first.
    """
    if titled:
        out.print(f"[bold]{escape(advice.part)}[/bold]")
        out.print(f"{escape(advice.headline)}\n")
    refers = advice.verdict == "safety_referral"
    for option in advice.options:
        # A referral ranks nothing that would be hardened.
        if not refers or option.route_kind in UNHARDENED:
            _print_option(option, out)
    kept = {(option.family, option.route) for option in advice.options}
    apart = sorted({(item.steel, item.text, item.find_out or "") for item in advice.apart})
    why = [advice.why_first] if advice.why_first else []
    sections = (
        ("Why the first stands before the second", why),
        ("Nearest misses", nearest_misses(advice) if advice.verdict == "no_option" else []),
        ("Out, and by which gate", rejected_lines(advice.rejected, kept)),
        (
            "Apart: cannot be judged yet",
            [
                f"{steel}: {text}. Find out {how}."
                for steel, text, how in apart
                if advice.coupon
            ],
        ),
        ("Worth knowing", advice.remarks),
        ("Coupon first", [f"{n}. {step}" for n, step in enumerate(advice.coupon, start=1)]),
        ("How firm is this?", [*firm_lines(advice), *_methods(advice.other_methods)]),
        ("By methods of other families", _compared(advice)),
        ("Assumed", advice.assumptions),
        ("Cautions", in_full(advice.cautions)),
    )
    for head, texts in sections:
        print_section(head, texts, out)


def _methods(methods: tuple[MethodOut, ...]) -> list[str]:
    """Return which other methods would put another option first."""
    return [f"{method.method}: {_first_by(method)}" for method in methods]


def _first_by(method: MethodOut) -> str:
    """Return which option a method puts first, and beside how many."""
    first = "the same first" if method.agrees_on_first else f"first {method.order[0]}"
    others = method.share_first - 1
    return first if not others else f"{first}, level with {others} more"


def _compared(advice: AdviceOut) -> list[str]:
    """Return what methods of other families say, where they were asked."""
    if advice.comparison is None:
        return []
    return [*_methods(advice.comparison.methods), advice.comparison.remark]
