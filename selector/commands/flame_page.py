"""The flame verdict on a terminal page."""

from typing import TYPE_CHECKING, Any

from rich.markup import escape

from selector.explain.hardness import shown
from selector.flame import FlameAnswer
from selector.flame_plot import axial_text, section_text

if TYPE_CHECKING:
    from rich.console import Console

WORDS = {
    "yes": "yes",
    "yes_if": "yes, if",
    "no": "no",
    "not_needed": "not needed",
    "coupon_first": "a coupon first",
}


def _bar(family: dict[str, Any]) -> str:
    """Return steel, condition and bath in words."""
    bath = f" in {family['medium']}" if family["medium"] else ""
    return f"{family['steel']}, {family['condition']}{bath}"


def _figure_lines(found: dict[str, Any]) -> list[str]:
    """Return the figures of an outcome, a line each."""
    if not found["reached"]:
        return [f"   heat       stops at {found['ceiling_c']:.0f} °C"]
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
    share = f", with {100 * found['flame_share']:.0f} % of the flame"
    return [
        (
            f"   hard       {shown(found['surface_hrc'])}, from {found['hard_from_mm']:.0f} to "
            f"{found['hard_to_mm']:.0f} mm, {found['depth_mm']:.1f} mm deep; core "
            f"{shown(found['core_hrc'])}"
        ),
        (
            f"   heat       to {found['target_c']:.0f} °C in {found['heat_s']:.0f} s, "
            f"{found['heated_past_mm']:.0f} mm past the zone, hold {found['hold_s']:.0f} s"
            + share
            * (found["flame_share"] < 0.95)
        ),
        (
            f"   gas        {found['gas_l']:.0f} l; {100 * found['efficiency']:.0f} % of its "
            "heat goes into the part"
        ),
        f"   soft ring  {softened}; bears {ring['torque_nm']:.0f} N m",
        (
            f"   corners    {found['hottest_c']:.0f} °C, "
            f"{abs(found['corner_margin_c']):.0f} °C "
            + ("short of" if found["corner_margin_c"] > 0 else "beyond")
            + " coarse grain"
        ),
        f"   temper     {drawn}; as quenched {shown(found['as_quenched_hrc'])}",
        (
            f"   bow        about {found['bow_p50_mm']:.2f} mm, "
            f"{found['bow_p90_mm']:.2f} mm in a bad case"
        ),
    ]


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
    why = found["why"].removeprefix("yes if ")
    out.print(f"Flame hardening: [bold]{WORDS[found['verdict']]}[/bold]. {escape(why)}.\n")
    best = answer.best
    if best is not None:
        lead = found["families"][0]
        _print_best(lead, out)
        if best.outcome is not None and best.outcome.hardness is not None:
            for lines in (axial_text(best.outcome), section_text(best.outcome)):
                out.print("\n".join(lines) + "\n", markup=False)
    back = found["residual_heat"]
    if back is not None:
        line = f"{WORDS[back['verdict']]}: {_bar(back)}. {back['why']}"
        out.print("[bold]Dip the end, let the heat run back, stop it at the colour[/bold]")
        out.print(f"   {line}\n", markup=False)
    _print_others(found["families"][1:], out)
    if found["cautions"]:
        out.print("[bold]Cautions[/bold]")
        for caution in found["cautions"]:
            out.print(
                f"   {caution['step']}: {caution['text']} \\[{caution['id']}]", highlight=False
            )


def _print_best(lead: dict[str, Any], out: "Console") -> None:
    """Print what comes out of the best family."""
    out.print(f"[bold]{escape(_bar(lead))}[/bold]")
    if lead["figures"] is not None:
        out.print("\n".join(_figure_lines(lead["figures"])), markup=False)
    for odd in lead["if"]:
        out.print(f"   if         {odd}", markup=False)
    if lead["change"] is not None:
        out.print(f"   change     {lead['change']['text']}", markup=False)
    elif lead["verdict"] == "no" and lead["figures"] is not None:
        out.print(
            "   change     no single one serves: a furnace, another steel, or send it out"
        )
    out.print()


def _print_others(families: list[dict[str, Any]], out: "Console") -> None:
    """Print the other families, a line each; a reason that many share once."""
    if not families:
        return
    out.print("[bold]Other steels[/bold]")
    by_line: dict[str, list[str]] = {}
    for family in families:
        change = f" One change: {family['change']['text']}." if family["change"] else ""
        why = family["why"].removeprefix("yes if ")
        if family["verdict"] == "no":
            by_line.setdefault(f"no: {why}.{change}", []).append(family["steel"])
        else:
            line = f"{WORDS[family['verdict']]}: {_bar(family)}. {why}.{change}"
            by_line.setdefault(line, [])
    for line, steels in by_line.items():
        named = f" ({', '.join(steels)})" if steels else ""
        out.print(f"   {line.replace('..', '.')}{named}", markup=False)
    out.print()
