"""The flame verdict on a terminal page."""

from collections import defaultdict
from typing import TYPE_CHECKING, Any

from rich.markup import escape

from selector.commands.terminal import print_figure, print_paragraph, print_section
from selector.flame.answer import FlameAnswer
from selector.flame.plot import axial_text, section_text
from selector.wording import shown

if TYPE_CHECKING:
    from rich.console import Console

WORDS = {
    "yes": "yes",
    "yes_if": "yes, if",
    "no": "no",
    "not_needed": "not needed",
    "coupon_first": "a coupon first",
}
# A thinner skin is gone with the scale. [mm]
LEAST_SKIN_MM = 0.02
# Amid the temper colours: a draw without one lies before or beyond them. [°C]
MID_COLOUR_C = 250.0
NO_CHANGE = "no single one serves: a furnace, another steel, or send it out"
NO_STEEL = (
    "none helps: more depth is asked than there is steel; ask for less, or a thicker section"
)


def _bar(family: dict[str, Any]) -> str:
    """Return steel, condition and bath in words."""
    bath = f" in {family['medium']}" if family["medium"] else ""
    return f"{family['steel']}, {family['condition']}{bath}"


def _why(found: dict[str, Any]) -> str:
    """Return a verdict and its reason as one sentence: what follows an "if" belongs to it."""
    why = found["why"].removeprefix("yes if ").rstrip(".")
    return ("{} {}" if found["verdict"] == "yes_if" else "{}. {}").format(
        f"[bold]{WORDS[found['verdict']]}[/bold]", f"{escape(why)}."
    )


def _deep(found: dict[str, Any]) -> str:
    """Return how deep the middle of the zone is hard."""
    if found["hard_through"]:
        return "hard through"
    return f"{found['depth_mm']:.1f} mm deep"


def _hard(found: dict[str, Any], asked: dict[str, Any]) -> str:
    """Return how hard, how far and how deep; of a zone that is too soft, where it is not."""
    low, high = found["hard_from_mm"], found["hard_to_mm"]
    surface, core = shown(found["surface_hrc"]), f"core {shown(found['core_hrc'])}"
    where = f"from {low:.0f} to {high:.0f} mm"
    if all(check["met"] for check in found["checks"] if check["name"] == "hard"):
        return f"{surface}, {where}, {_deep(found)}; {core}"
    if high <= low:
        return f"{surface} at the softest place, nowhere in the zone {asked['text']}; {core}"
    deep = f", {_deep(found)} at its middle" if found["depth_mm"] else ""
    return f"{surface} at the softest place; hard enough only {where}{deep}; {core}"


def _seen(seen: dict[str, Any]) -> str:
    """Return the colour of the heat in this light, and how well it is read."""
    read = {"eye": "eye", "magnet": "magnet and eye"}.get(seen["read_by"], seen["read_by"])
    text = f"read by {read} to ±{seen['error_c']:.0f} °C"
    if seen["colour"] is None:
        return f"outside the printed tables; {text}"
    low, high = seen["tables_c"]
    colour = f"{seen['colour']} in {seen['light']} (printed tables {low:.0f} to {high:.0f} °C)"
    duller = seen["looks_duller_by_c"]
    return f"{colour}, {text}" + (
        f"; looks {duller:.0f} °C duller than it is" if duller else ""
    )


def _asked(asked: dict[str, Any]) -> str:
    """Return what hardness and depth are asked."""
    deep = f", {asked['depth_mm']:g} mm deep" if asked["depth_mm"] else ""
    most = f", at most {asked['most']}" if asked["most"] else ""
    return f"{asked['text']}{most}{deep}"


def _bears(ring: dict[str, Any]) -> str:
    """Return the torque the part bears, and where, if its form and not softness sets it."""
    where = f" at {ring['weakest']}" if ring["weakest"] else ""
    torque = ring["torque_nm"]
    borne = f"{torque:.0f}" if torque >= 10.0 else f"{torque:.1f}"
    return f"bears {borne} N m{where} before it twists throughout"


def _cooling(places: list[dict[str, Any]]) -> str:
    """Return how surface and core of the zone cool, as on an end-quench bar."""
    told = [
        f"{place['at']} {place['jominy_mm']:.1f} mm ({place['rate_704_c_k_per_s']:.0f} K/s)"
        for place in places
        if place["jominy_mm"] is not None
    ]
    return f"as on an end-quench bar at {', '.join(told)}; rates at 704 °C" if told else "none"


def _rows(found: dict[str, Any], asked: dict[str, Any]) -> list[tuple[str, str]]:
    """Return the figures of an outcome, each with its name."""
    if not found["reached"]:
        return [("heat", f"stops at {found['ceiling_c']:.0f} °C")]
    ring, temper = found["soft_ring"], found["temper"]
    softened = (
        f"{shown(ring['hrc'])} at {ring['at_mm']:.0f} mm, {ring['width_mm']:.0f} mm wide"
        if ring["width_mm"]
        else f"none; softest outside is {shown(ring['hrc'])} at {ring['at_mm']:.0f} mm"
    )
    drawn = (
        f"{temper['temperature_c']:.0f} °C, {temper['means']}, {temper['time_min']:.0f} min"
        if temper["temperature_c"]
        else "none to be had"
    )
    if temper["temperature_c"]:
        beyond = "past" if temper["temperature_c"] > MID_COLOUR_C else "short of"
        colour = temper["colour"]
        drawn += f"; shows {colour}" if colour else f"; {beyond} the temper colours"
    share = f", with {100 * found['flame_share']:.0f} % of the flame"
    apart, used = abs(found["corner_margin_c"]), 100 * found["efficiency"]
    side = "short of" if found["corner_margin_c"] > 0 else "beyond"
    rows = [
        ("hard", _hard(found, asked)),
        ("asked", _asked(asked)),
        (
            "heat",
            f"to {found['target_c']:.0f} °C in {found['heat_s']:.0f} s, "
            f"{found['heated_past_mm']:.0f} mm past the zone, hold {found['hold_s']:.0f} s"
            + share
            * (found["flame_share"] < 0.95),
        ),
        ("colour", _seen(found["seen"])),
        ("gas", f"{found['gas_l']:.0f} l; {used:.0f} % of its heat goes into the part"),
        ("quench", _cooling(found["cooling"])),
        ("soft ring", f"{softened}; {_bears(ring)}"),
        ("corners", f"{found['hottest_c']:.0f} °C, {apart:.0f} °C {side} coarse grain"),
        ("temper", f"{drawn}; as quenched {shown(found['as_quenched_hrc'])}"),
        ("bow", f"about {found['bow_p50_mm']:.2f} mm, {found['bow_p90_mm']:.2f} in a bad case"),
    ]
    if found["soft_skin_mm"] >= LEAST_SKIN_MM:
        rows.append(("skin", f"{found['soft_skin_mm']:.2f} mm goes soft in the flame"))
    if found["ground_off_mm"]:
        face = (
            f"{found['ground_off_mm']:g} mm a side comes off: hardness and depth are below it"
        )
        rows.append(("ground", face))
    if found["cracking"] is not None:
        rows.append(("cracking", found["cracking"]["text"]))
    if found["from_the_other_end"]:
        rows.insert(0, ("places", "are counted from the other end, which is the hard one"))
    return rows


def print_flame(found: dict[str, Any], answer: FlameAnswer, out: "Console") -> None:
    """Print the verdict, the figures and the map of the best family, then the others.

    Parameters
    ----------
    found : dict
        The answer as plain data.
    answer : FlameAnswer
        For the map.
    out : Console
        Where to.
    """
    out.print(f"[bold]{escape(found['part'])}[/bold]")
    out.print(f"Flame hardening: {_why(found)}\n")
    best, families = answer.best, found["families"]
    led = bool(families) and _is_done(families[0])
    if led:
        _print_best(families[0], found["asked"], out)
    if best is not None and best.outcome is not None:
        for lines in (axial_text(best.outcome), section_text(best.outcome)):
            if lines:
                out.print("\n".join(lines) + "\n", markup=False)
    back = found["residual_heat"]
    if back is not None:
        head = "Dip the end, let the heat run back, stop it at the colour"
        print_section(head, [f"{_bar(back)}: {_reason(back)}"], out)
    if led or len(families) > 1:  # the only steel of all is told by the first line
        _print_others("Other steels" if led else "Steels", families[led:], out)
    print_section("Assumed", found["assumptions"], out)
    cautions = [f"{c['step']}: {c['text']} [{c['id']}]" for c in found["cautions"]]
    print_section("Cautions", cautions, out)


def _print_best(lead: dict[str, Any], asked: dict[str, Any], out: "Console") -> None:
    """Print what comes out of the best family."""
    out.print(f"[bold]{escape(_bar(lead))}[/bold]")
    figures = lead["figures"]
    if figures is not None:
        for name, text in _rows(figures, asked):
            print_figure(name, text, out)
    for odd in lead["if"]:
        print_figure("if", odd, out)
    if lead["change"] is not None:
        print_figure("change", lead["change"]["text"], out)
    elif lead["verdict"] == "no" and figures is not None:
        amiss = {check["name"] for check in figures["checks"] if not check["met"]}
        no_steel = "depth" in amiss and figures.get("hard_through", False)
        print_figure("change", NO_STEEL if no_steel else NO_CHANGE, out)
    out.print()


def _is_done(family: dict[str, Any]) -> bool:
    """Return whether there is more to tell of a family than a word and its reason."""
    told = family["figures"] or family["change"]
    return bool(told) or family["verdict"] in {"yes", "yes_if", "coupon_first"}


def _print_others(head: str, families: list[dict[str, Any]], out: "Console") -> None:
    """Print the other families; a reason or a condition that many share once."""
    if not families:
        return
    out.print(f"[bold]{head}[/bold]")
    by_reason: dict[str, list[dict[str, Any]]] = defaultdict(list)
    for family in families:
        by_reason[_shared(family)].append(family)
    for reason, sharing in by_reason.items():
        if sharing[0]["verdict"] in {"yes", "yes_if"}:
            print_paragraph(f"{reason}:", out)
            for family in sharing:
                print_paragraph(f"{_bar(family)}: {_brief(family)}", out, 5)
        else:
            steels = ", ".join(family["steel"] for family in sharing)
            print_paragraph(f"{reason} ({steels})", out)
    out.print()


def _reason(family: dict[str, Any]) -> str:
    """Return a verdict with its reason or condition, without a stop."""
    why = family["why"].removeprefix("yes if ").rstrip(".")
    join = " " if family["verdict"] == "yes_if" else ": "
    return f"{WORDS[family['verdict']]}{join}{why}"


def _shared(family: dict[str, Any]) -> str:
    """Return what a family may share with others: of a yes the condition without figures."""
    if family["verdict"] == "yes":
        return WORDS["yes"]
    reason = _reason(family)
    return (
        reason.partition(" (")[0] if family["verdict"] == "yes_if" else reason + _remedy(family)
    )


def _remedy(family: dict[str, Any]) -> str:
    """Return the one change of a family that does not do as it is."""
    if family["change"] is None or family["verdict"] != "no":
        return "." if family["verdict"] not in {"yes", "yes_if"} else ""
    return f". One change: {family['change']['text']}."


def _brief(family: dict[str, Any]) -> str:
    """Return what comes out of a family that does, in a line, and what else to know."""
    change = family["change"]
    found = family["figures"] if change is None else change["figures"]
    text = f"{shown(found['surface_hrc'])}, {_deep(found)}"
    cracks = found["cracking"]
    if cracks is not None and cracks["class"] != "low":
        text += f", cracking {cracks['text']}"
    for odd in family["if"]:
        if family["why"] != f"yes if {odd}":
            text += f"; if {odd.partition(' (')[0]}"
    return text
