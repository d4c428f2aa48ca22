"""The ways side by side: the proposed one, two of another kind, what the difference buys."""

from collections.abc import Sequence

from selector.advice.record import AdviceOut
from selector.handover.letter.record import Row, Table, Way
from selector.handover.letter.said import (
    goes_wrong,
    is_hardened,
    is_sent_out,
    way_words,
)
from selector.record import OptionOut
from selector.requirement.zone import Zone
from selector.wording import condition_words, shown, times_in_100

# So many ways beside the proposed one.
OTHERS = 2
_KIND = {
    "cheap": "plainer steel",
    "better": "better steel",
    "as_bought": "not hardened",
    "bought_hard": "bought hard",
    "sent_out": "sent out",
    "first": "first in the advice",
}
# What is longer than this is a finding of the bench, not a word for a customer.
FEW_LETTERS = 24
# A smaller difference in price or chance is none to a reader.
SAME_MONEY, SAME_CHANCE = 0.5, 0.03


def ways(advice: AdviceOut, option: OptionOut) -> tuple[Way, ...]:
    """Return the proposed way and up to two of another kind.

    Parameters
    ----------
    advice : AdviceOut
        With all its options.
    option : OptionOut
        The one proposed.

    Returns
    -------
    tuple of Way
        Of the alternatives of the advice those that are done otherwise before those that only
        take another steel, of more than two the cheapest and the dearest; the cheaper first.
        Where another than the first of the advice is proposed, that first one.
    """
    by_id = {other.id: other for other in advice.options}
    others = [
        Way(kind=item.kind, option=by_id[item.id])
        for item in advice.alternatives
        if item.id in by_id and item.id != option.id
    ]
    # What is done otherwise differs more than what only takes another steel.
    others.sort(key=lambda way: (_is_alike(option, way.option), price(way.option)))
    unlike = sum(not _is_alike(option, way.option) for way in others)
    if len(others) > OTHERS:
        others = [others[0], others[max(unlike, OTHERS) - 1]]
    others.sort(key=lambda way: price(way.option))
    if advice.options and advice.options[0].id != option.id:
        first = Way(kind="first", option=advice.options[0])
        others = [first, *others[: OTHERS - 1]]
    return (Way(kind="proposed", option=option), *others)


def _is_alike(first: OptionOut, other: OptionOut) -> bool:
    """Return whether two ways are done alike: at the same place, by the same kind of heat."""
    done = (
        (o.route_kind, o.condition == "hard-element", is_sent_out(o)) for o in (first, other)
    )
    return next(done) == next(done)


def price(option: OptionOut) -> float:
    """Return what a good part costs, in its currency."""
    return option.cost.spread.p50 or 0.0


def money(option: OptionOut) -> str:
    """Return the price of a part, whole: "113 EUR"."""
    return f"{price(option):.0f} {option.cost.currency}"


def _days(option: OptionOut) -> str:
    """Return how long it takes."""
    return "in a day" if option.days == 1 else f"in {option.days:g} days"


def table(seen: Sequence[Way], zone: Zone, count: int) -> Table:
    """Return the ways as a table.

    Parameters
    ----------
    seen : sequence of Way
        The proposed one first.
    zone : Zone
        The one that is hardened.
    count : int
        How many parts are made.

    Returns
    -------
    Table
        A column each.
    """
    options = [way.option for way in seen]
    rows = [
        Row(name="steel", cells=tuple(_steel(o) for o in options)),
        Row(name="hardened", cells=tuple(way_words(o, zone) for o in options)),
        Row(
            name="price" if count == 1 else "price each",
            cells=tuple(money(o) for o in options),
            strong=True,
        ),
        Row(name="ready", cells=tuple(_days(o) for o in options)),
        Row(
            name="comes out right",
            cells=tuple(times_in_100(o.passing_all) for o in options),
            bold=True,
        ),
    ]
    if options[0].within_budget is not None:
        cells = tuple(times_in_100(o.within_budget or 0.0) for o in options)
        rows.append(Row(name="within your limit", cells=cells))
    against = [_against(options[0], other) for other in options[1:]]
    rows.append(Row(name="for or against", cells=(_for(options), *against)))
    return Table(heads=tuple(_head(options[0], way) for way in seen), rows=tuple(rows))


def _steel(option: OptionOut) -> str:
    """Return a steel with the state it is bought in."""
    return f"{option.spoken}, {condition_words(option.condition)}"


def _head(first: OptionOut, way: Way) -> str:
    """Return the head of a column: "Cheaper, plainer steel"."""
    if way.kind == "proposed":
        return "Proposed"
    more = price(way.option) - price(first)
    by = "Cheaper" if more <= -SAME_MONEY else "Dearer" if more >= SAME_MONEY else "As dear"
    # What both are is no difference between them.
    alike = is_sent_out(first) or not is_hardened(first)
    alike = alike and _is_alike(first, way.option) and way.kind != "first"
    return f"{by}, {'another steel' if alike else _KIND[way.kind]}"


def _for(options: Sequence[OptionOut]) -> str:
    """Return what speaks for the proposed way beside the others."""
    first, *others = options
    if not others:
        return "the only way that is left"
    if all(price(first) < price(o) + SAME_MONEY for o in others):
        return "no other way is cheaper"
    if all(_whole(first) >= _whole(o) for o in others):
        return "no other way is surer"
    return "best on balance"


def _whole(option: OptionOut) -> int:
    """Return how often of a hundred it comes out right, as it is printed."""
    return round(100 * option.passing_all)


def _against(first: OptionOut, other: OptionOut) -> str:
    """Return what another way has against it or before the first, in a few words."""
    said = []
    fewer = first.passing_all - other.passing_all
    if fewer >= SAME_CHANCE:
        said.append(f"{goes_wrong(1.0 - other.passing_all)}{_risk(other)}")
    within, beside = first.within_budget, other.within_budget
    if within is not None and beside is not None and within - beside >= SAME_CHANCE:
        said.append("oftener over your limit")
    said += _longer(first, other)
    if fewer <= -SAME_CHANCE:
        said.append("comes out right more often")
    if is_hardened(first) and not is_hardened(other):
        said.append(f"stays at {hrc_words(other)}")
    return "; ".join(said[:2]) or "little between them but the price"


def _longer(first: OptionOut, other: OptionOut) -> list[str]:
    """Return how the days of another way compare."""
    if other.days - first.days >= SAME_MONEY:
        return [
            "takes longer"
            + (", out of our hands" if is_sent_out(other) and not is_sent_out(first) else "")
        ]
    return ["is ready sooner"] if first.days - other.days >= SAME_MONEY else []


def _risk(option: OptionOut) -> str:
    """Return the likeliest fault, where it is said in a few words."""
    risk = option.chief_risk.split(" (")[0]
    return f": {risk}" if len(risk) <= FEW_LETTERS else ""


def hrc_words(option: OptionOut) -> str:
    """Return how hard the surface comes out."""
    return shown(option.hardness.surface.p50 or float("nan"))
