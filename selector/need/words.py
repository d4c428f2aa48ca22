"""What a part must bear, in sentences."""

from dataclasses import dataclass

from selector.duty.contact import pressings
from selector.duty.pair import left_open
from selector.job.demand import FOR_WEAR, Demand
from selector.need.record import PlainBar, SectionNeed
from selector.record import Spread
from selector.requirement import Requirement
from selector.wording import shown, shown_range


@dataclass(frozen=True, slots=True)
class Window:
    """The softest and the hardest that bear a load; None where an end binds nothing. [HRC]."""

    low_hrc: float | None
    high_hrc: float | None


def strength(sure: Window | None, stated: Window | None, governs: str) -> str:
    """Return what one section needs to bear its loads: `sure` nine times in ten."""
    if stated is None:
        return (
            f"no hardness stands the {governs} here: make it thicker, ease the notch, or take "
            "load off"
        )
    if sure is None:
        just = "only one hardness" if stated.low_hrc is None else shown(stated.low_hrc)
        return f"{just} just stands the {governs}; no hardness does so surely"
    text = f"any steel stands the {governs}"
    if sure.low_hrc is not None:
        text = f"{shown(sure.low_hrc)} or more stands the {governs} nine times in ten"
    if sure.high_hrc is not None:
        text += f"; above {shown(sure.high_hrc)} its notch no longer yields and it may snap"
    return text


def blow(energy_j: float, force_n: float, least_hrc: float | None) -> str:
    """Return what a blow asks of the thinnest section, or that no hardness springs back."""
    start = f"a blow of {energy_j:g} J, taken by the part alone, is {force_n / 1e3:.0f} kN"
    if least_hrc is None:
        return f"{start}: no hardness springs back; it upsets unless the work yields"
    return f"{start}: {shown(least_hrc)} or more springs back"


def contact(
    pressure_mpa: float, surface: Spread | None, depths: dict[str, Spread], *, rolling: bool
) -> str:
    """Return what one contact needs: a hard surface, and a hard layer over each core."""
    how = "rolled over for long" if rolling else "pressed now and then"
    start = f"{pressure_mpa:.0f} MPa of contact pressure, {how}"
    if surface is None or surface.p50 is None:
        return f"{start}: no hardness bears it; a larger radius or a longer line"
    over = ", ".join(
        f"{d.p50:.2f} mm over {core}" if d.p50 else f"none needed over {core}"
        for core, d in depths.items()
    )
    return f"{start}: {shown(surface.p50)} or more at the surface; hard layer {over}"


def gaps(asked: Requirement) -> tuple[str, ...]:
    """Return what the requirement does not say, and what is assumed instead."""
    said = []
    if not any((asked.load.torque, asked.load.bending, asked.load.axial)):
        said.append("No torque, bending or axial load given: strength is not judged.")
    if asked.load.contact and not pressings(asked):
        said.append("The contact force falls on nothing round that wears: it is not judged.")
    if asked.load.contact and pressings(asked):
        said.append(
            "The contact force is taken to bear along the whole length of the section, against "
            "a flat; a crowned or short mate presses harder."
        )
    said += [text for zone in asked.zone if (text := left_open(zone)) is not None]
    return tuple(said)


def where(asked: Requirement, lead: Demand) -> str:
    """Return where the leading zone is, by what the user calls it or its sections."""
    called = [asked.part.section[place].name for place in lead.sections]
    name = asked.zone[lead.zone].name or " and ".join(text for text in called if text)
    if name:
        return f"on the {name}"
    if len(lead.sections) == len(asked.part.section):
        return "all over"
    return "on section " + " and ".join(f"{place + 1}" for place in lead.sections)


def _asks(lead: Demand, place: str) -> str:
    """Return what the leading zone asks at its place."""
    hard = f"{shown(lead.floor_hrc or 0.0)} or more"
    if lead.low_hrc is not None and lead.high_hrc is not None:
        hard = shown_range(lead.low_hrc, lead.high_hrc)
    deep = f", {lead.depth_mm:g} mm deep," if lead.depth_mm else ""
    return f"{hard}{deep} {place}; {lead.reason}"


def _wish(lead: Demand, place: str) -> str | None:
    """Return what a zone wishes for and does without, None where it wishes for nothing."""
    if lead.low_hrc is None or lead.high_hrc is None or lead.floor_hrc is not None:
        return None
    hard = shown_range(lead.low_hrc, lead.high_hrc)
    return f"no zone has to be hard: {hard} {place} is a wish only"


def headline(
    verdict: str,
    lead: Demand,
    place: str,
    needs: tuple[SectionNeed, ...],
    bar: PlainBar | None,
) -> str:
    """Return the first line: whether hardness is needed at all, and what for."""
    borne = ""
    if needs:
        borne = (
            f"It stands its load as bought ({bar.text})" if bar else "Any steel stands its load"
        )
    if verdict == "none":
        wish = _wish(lead, place)
        if borne:
            return f"{borne}; {wish or 'no zone asks for hardness: none is needed'}."
        if wish:
            return f"No load is given, and {wish}."
        return "No zone asks for hardness and no load is given: none is needed."
    if verdict == "wear":
        start = f"{borne}; hardness is" if borne else "Hardness is"
        alone = " alone" if borne and lead.purpose == FOR_WEAR else ""
        return f"{start} {lead.purpose}{alone}: {_asks(lead, place)}."
    unborne = next((need for need in needs if need.least is None), None)
    if unborne is not None:
        return f"Section {unborne.section}: {unborne.text}."
    strong = max(needs, key=_least)
    text = f"No bar stands its load as bought; section {strong.section}: {strong.text}"
    return (
        f"{text}; and {_asks(lead, place)}." if verdict == "wear_and_strength" else f"{text}."
    )


def _least(need: SectionNeed) -> float:
    """Return the least hardness of a section. [HRC]."""
    return need.least.p50 if need.least and need.least.p50 is not None else -1e3
