"""The flame verdict on a terminal page."""

from collections import defaultdict
from typing import TYPE_CHECKING

from rich.markup import escape

from selector.commands.caution import first_lines, in_full
from selector.commands.terminal import print_figure, print_paragraph, print_section
from selector.flame.answer import FlameAnswer
from selector.flame.output import map_of, stretch_of
from selector.flame.plot import axial_text, section_text
from selector.flame.record import AskedOut, FamilyOut, FiguresOut, FlameOut
from selector.procedure.heating import held_parts_s
from selector.record import OptionOut, SetUpOut
from selector.wording import shown, shown_spread, temper_words

if TYPE_CHECKING:
    from rich.console import Console

WORDS = {
    "yes": "yes",
    "yes_if": "yes, if",
    "no": "no",
    "not_needed": "not needed",
    "coupon_first": "a coupon first",
}
NO_CHANGE = "no single one serves: a furnace, another steel, or send it out"
# Turned up by more than this, a flame is not worth turning down.
ALL_OF_IT = 0.95


def print_flame(
    flame: FlameOut, answer: FlameAnswer, out: "Console", *, every_caution: bool = False
) -> None:
    """Print the verdict, the figures and the map of the best family, then the others.

    Parameters
    ----------
    flame : FlameOut
        The answer as plain data.
    answer : FlameAnswer
        For the map.
    out : Console
        Where to.
    every_caution : bool
        Whether to print every caution in full; otherwise the worst few.
    """
    out.print(f"[bold]{escape(flame.part)}[/bold]")
    out.print(f"Flame hardening: {_why(flame)}")
    if flame.bought_hard is not None:
        out.print(f"Sold hard, to use without any heat: {escape(flame.bought_hard)}.")
    out.print()
    best, families = answer.best, flame.families
    led = bool(families) and (families[0].option is not None or families[0].change is not None)
    if led:
        _print_best(families[0], flame.asked, out)
    if best is not None and best.option is not None:
        part, hard = stretch_of(answer.job, best.option), map_of(answer.job, best.option)
        for lines in (axial_text(part, hard), section_text(part, hard)):
            out.print("\n".join(lines) + "\n", markup=False)
    back = flame.residual_heat
    if back is not None and back not in families[:1]:
        head = "Quench the end, let the colour run down, quench out at the colour"
        print_section(head, [f"{_bar(back)}: {_reason(back)}"], out)
    if led or len(families) > 1:  # the only steel of all stands in the first line
        _print_others("Other steels" if led else "Steels", families[led:], out)
    print_section("Assumed", list(flame.assumptions), out)
    said = in_full(flame.cautions) if every_caution else first_lines(flame.cautions)
    print_section("Cautions", said, out)


def _bar(family: FamilyOut) -> str:
    """Return steel, condition and bath in words."""
    bath = f" in {family.medium}" if family.medium else ""
    return f"{family.steel}, {family.condition}{bath}"


def _why(flame: FlameOut) -> str:
    """Return a verdict and its reason as one sentence: what follows an "if" belongs to it."""
    why = flame.why.rstrip(".")
    return ("{} {}" if flame.verdict == "yes_if" else "{}. {}").format(
        f"[bold]{WORDS[flame.verdict]}[/bold]", f"{escape(why)}."
    )


def _print_best(lead: FamilyOut, asked: AskedOut, out: "Console") -> None:
    """Print what comes out of the best family."""
    out.print(f"[bold]{escape(_bar(lead))}[/bold]")
    if lead.option is not None and lead.figures is not None:
        for name, text in _rows(lead.option, lead.figures, asked):
            print_figure(name, text, out)
    for condition in lead.conditions:
        print_figure("if", condition, out)
    if lead.change is not None:
        surface = shown_spread(lead.change.option.hardness.surface)
        print_figure("change", f"{lead.change.text}: {surface}", out)
    elif lead.verdict == "no":
        print_figure("change", NO_CHANGE, out)
    out.print()


def _rows(option: OptionOut, seen: FiguresOut, asked: AskedOut) -> list[tuple[str, str]]:
    """Return the figures of an option at a torch, each with its name."""
    ring, hard = seen.soft_ring, option.hardness
    softened = (
        f"{shown(ring.hrc)} at {ring.at_mm:.0f} mm, {ring.width_mm:.0f} mm wide"
        if ring.width_mm
        else f"none; softest outside is {shown(ring.hrc)} at {ring.at_mm:.0f} mm"
    )
    apart, side = (
        abs(seen.corner_margin_c),
        "short of" if seen.corner_margin_c > 0 else "beyond",
    )
    bow = option.movement_mm.p50 or 0.0
    rows = [
        ("hard", _hard(option, seen)),
        ("core", shown_spread(hard.core)),
        ("asked", _asked(asked)),
        *_set_up(option.set_up, seen),
        ("soft ring", f"{softened}; {_bears(seen)}"),
        ("edges", f"{seen.hottest_c:.0f} °C, {apart:.0f} °C {side} coarse grain"),
        ("temper", f"{temper_words(option.temper)}; as quenched {shown(seen.as_quenched_hrc)}"),
        ("bow", f"{_bow(bow)}, {_bow(seen.bow_p90_mm)} in a bad case"),
    ]
    if option.crack is not None:
        reasons = f": {', '.join(option.crack.reasons)}" if option.crack.reasons else ""
        rows.append(("cracking", f"{option.crack.crack_class}{reasons}"))
    if seen.from_the_other_end:
        rows.insert(0, ("places", "are counted from the other end, which is the hard one"))
    return rows


def _bow(mm: float) -> str:
    """Return a bow in words. [mm]."""
    return "under 0.01 mm" if mm < 0.01 else f"{mm:.2f} mm"


def _hard(option: OptionOut, seen: FiguresOut) -> str:
    """Return how hard, from where to where and how deep."""
    depth = option.hardness.depth_mm.p50 or 0.0
    deep = "hard through" if option.hardness.through else f"{depth:.1f} mm deep"
    where = f"from {seen.hard_from_mm:.0f} to {seen.hard_to_mm:.0f} mm"
    if seen.hard_to_mm <= seen.hard_from_mm:
        where = "nowhere hard enough"
    return f"{shown_spread(option.hardness.surface)}, {where}, {deep}"


def _asked(asked: AskedOut) -> str:
    """Return what hardness and depth are asked."""
    deep = f", {asked.depth_mm:g} mm deep" if asked.depth_mm else ""
    most = f", at most {asked.most}" if asked.most else ""
    return f"{asked.text}{most}{deep}"


def _set_up(done: SetUpOut | None, seen: FiguresOut) -> list[tuple[str, str]]:
    """Return how the part is heated and quenched."""
    if done is None:
        return []
    rows = [("heat", _heat(done)), ("colour", _colour(done))]
    if done.gas_l is not None:
        used = 100 * seen.efficiency
        rows.append(("gas", f"{done.gas_l:.0f} l; {used:.0f} % of its heat goes into the part"))
    warm = f" at {done.bath_c:.0f} °C" if done.bath_c is not None else ""
    rows.append(("quench", f"{done.medium}{warm}, within {done.delay_s:.1f} s: {done.way_in}"))
    return rows


def _heat(done: SetUpOut) -> str:
    """Return to which heat, how far past the zone, how long held and with how much flame."""
    text = f"to {done.heat_c:.0f} °C"
    if done.to_heat_s is not None:
        text += f" in {done.to_heat_s:.0f} s"
    if done.past_zone_mm:
        text += f", {done.past_zone_mm:.0f} mm past the zone"
    even_s, kept_s = held_parts_s(done)
    text += f", {even_s:.0f} s until it is of one colour" if even_s else ""
    text += f", hold {kept_s:.0f} s"
    if done.flame_share is not None and done.flame_share < ALL_OF_IT:
        text += f", with {100 * done.flame_share:.0f} % of the flame"
    return text


def _colour(done: SetUpOut) -> str:
    """Return the colour of the heat in this light, and how well it is read."""
    by = {"eye": "eye", "magnet": "magnet and eye"}.get(done.read_by, done.read_by)
    text = f"read by {by} to ±{done.misread_c:.0f} °C"
    if done.colour is None or done.tables_c is None:
        return f"outside the printed tables; {text}"
    low, high = done.tables_c
    text = f"{done.colour} in {done.light} (printed tables {low:.0f} to {high:.0f} °C), {text}"
    if done.looks_duller_c:
        text += f"; looks {done.looks_duller_c:.0f} °C duller than it is"
    return text


def _bears(seen: FiguresOut) -> str:
    """Return the torque the part bears, and where, if its form and not softness sets it."""
    ring = seen.soft_ring
    where = f" at {ring.weakest}" if ring.weakest else ""
    borne = f"{ring.torque_nm:.0f}" if ring.torque_nm >= 10.0 else f"{ring.torque_nm:.1f}"
    return f"bears {borne} N m{where} before it twists throughout"


def _print_others(head: str, families: tuple[FamilyOut, ...], out: "Console") -> None:
    """Print the other families; a reason or a condition that many share once."""
    if not families:
        return
    out.print(f"[bold]{head}[/bold]")
    by_reason: dict[str, list[FamilyOut]] = defaultdict(list)
    for family in families:
        by_reason[_shared(family)].append(family)
    for reason, sharing in by_reason.items():
        if sharing[0].verdict in {"yes", "yes_if"}:
            print_paragraph(f"{reason}:", out)
            for family in sharing:
                print_paragraph(f"{_bar(family)}: {_brief(family)}", out, 5)
        else:
            steels = ", ".join(family.steel for family in sharing)
            print_paragraph(f"{reason} ({steels})", out)
    out.print()


def _reason(family: FamilyOut) -> str:
    """Return a verdict with its reason or condition, without a stop."""
    why = family.why.rstrip(".")
    join = " " if family.verdict == "yes_if" else ": "
    return f"{WORDS[family.verdict]}{join}{why}"


def _shared(family: FamilyOut) -> str:
    """Return what a family may share with others: of a yes the condition without figures."""
    if family.verdict == "yes":
        return WORDS["yes"]
    reason = _reason(family)
    return reason.partition(" (")[0] if family.verdict == "yes_if" else f"{reason}."


def _brief(family: FamilyOut) -> str:
    """Return what comes out of a family that does, in a line, and what else to know."""
    option = family.option
    if option is None:
        return WORDS[family.verdict]
    depth = option.hardness.depth_mm.p50 or 0.0
    deep = "hard through" if option.hardness.through else f"{depth:.1f} mm deep"
    text = f"{shown_spread(option.hardness.surface)}, {deep}"
    if option.crack is not None and option.crack.crack_class != "low":
        text += f", cracking {option.crack.crack_class}"
    for condition in family.conditions[1:]:
        text += f"; if {condition.partition(' (')[0]}"
    return text
