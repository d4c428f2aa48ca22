"""How firm the choice is, on the terminal."""

from typing import TYPE_CHECKING

from rich.markup import escape

from selector.advice.record import AdviceOut, TurnOut
from selector.commands.terminal import print_rows, print_section
from selector.wording import condition_words, in_100

if TYPE_CHECKING:
    from rich.console import Console

# So many options are set side by side.
LEADING = 8


def print_firm(advice: AdviceOut, out: "Console") -> None:
    """Print how firm the choice is: shares and regrets, weights, prices, what to measure.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    """
    out.print(f"[bold]{escape(advice.part)}[/bold]", soft_wrap=True)
    if advice.firm is None:
        out.print("Nothing is ranked, so there is no choice to be firm.")
        return
    print_section("How firm is this?", [advice.firm.sentence], out)
    heads = ("", "option", "first", "in three", "by weights", "regret")
    rows = zip(advice.firm.options, advice.options[:LEADING], strict=False)
    print_rows(
        heads,
        [
            (
                f"{row.place}.",
                f"{option.spoken}, {condition_words(option.condition)}, {option.route}",
                in_100(row.first),
                in_100(row.top_three),
                in_100(row.first_by_weights),
                f"{row.regret_money:.0f} {option.cost.currency}",
            )
            for row, option in rows
        ],
        out,
    )
    print_section("What would put another first, and what to measure", firm_lines(advice), out)


def firm_lines(advice: AdviceOut) -> list[str]:
    """Return how firm the choice is in sentences, after the one on the page; none unasked.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.

    Returns
    -------
    list of str
        Weights, prices, what to measure, pairs that seem to contradict the order.
    """
    firm = advice.firm
    if firm is None:
        return []
    lines = [line for turn in firm.turns for line in _turned(turn, advice)]
    if len(firm.options) > 1 and not lines:
        lines.append("No weight by itself puts another option first.")
    money = advice.options[0].cost.currency
    if firm.dearer is not None:
        lines.append(
            f"It is first until it costs {firm.dearer.at:.0f} {money} instead of "
            f"{firm.dearer.now:.0f}: then {firm.dearer.first_then}."
        )
    if firm.second_cheaper is not None:
        cheap = firm.second_cheaper
        lines.append(
            f"The second comes first where it costs {cheap.at:.0f} {money} instead of "
            f"{cheap.now:.0f}."
        )
    for find in firm.measures:
        step = find.step or "no measurement beforehand narrows it"
        lines.append(
            f"{100 * find.explains:.0f} % of what lies between the first and its rival: "
            f"{find.words} ({step})."
        )
    return [*lines, *firm.against_shares]


def _turned(turn: TurnOut, advice: AdviceOut) -> list[str]:
    """Return at which weights of one criterion another option comes first, in sentences."""
    spoken = {option.id: option for option in advice.options}
    lines = []
    for side, at, name in (
        ("under", turn.below, turn.first_below),
        ("above", turn.above, turn.first_above),
    ):
        if at is not None and name is not None:
            then = spoken.get(name)
            who = name if then is None else f"{then.spoken}, {condition_words(then.condition)}"
            lines.append(
                f"First until {turn.words} weighs {side} {100 * at:.0f} % (now "
                f"{100 * turn.now:.0f} %): then {who}."
            )
    return lines
