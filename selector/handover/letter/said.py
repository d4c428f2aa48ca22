"""Plain language for a reader who is no engineer: duties, ways, checks and chances."""

from selector.procedure.instrument import file_words
from selector.record import OptionOut, StepOut
from selector.requirement.zone import Zone
from selector.wording import in_sentence, quenched_words

_DUTY = {
    "none": "need not be hard",
    "sliding": "must slide without wearing away",
    "abrasive": "must stand up to grit",
    "rolling-contact": "must bear rolling under load",
    "edge-impact": "must take knocks and stay sharp",
}
# Of what is to wear before its mate the letter says what it does, not that it must last.
_GIVES_WAY = {
    "none": "need not be hard",
    "sliding": "will slide",
    "abrasive": "will work in grit",
    "rolling-contact": "will roll under load",
    "edge-impact": "will take knocks",
}
_MATE = {
    "part": "and must wear before the mate does ({mate})",
    "mate": "while the mate wears ({mate})",
    "either": "against the mate ({mate})",
}
_HEATED = {
    "local-torch": "{zone} alone, by torch",
    "residual-heat": "the end, by torch",
    "through-torch": "it all over, by torch",
    "through-furnace": "it all over, in the furnace",
    "carburise": "a hard case, grown in a pack",
    "case": "a thin hard case",
    "age": "it all over, aged in the furnace",
    "normalise": "evened by heat, not hardened",
    "induction": "{zone} alone, by induction",
    "firm-flame": "{zone} alone, by flame",
    "laser": "{zone} alone, by laser",
    "nitride": "a hard skin, nitrided",
    "chrome": "a hard skin, chrome-plated",
    "anneal": "softened by heat, not hardened",
    "subcontract": "it all over",
}
_UNHARDENED = {
    "as-bought": "not hardened: used as bought",
    "prehard": "used as it comes, pre-hardened",
    "buy-hard-element": "bought ready hard",
}
# Heats that no bath follows.
UNQUENCHED = frozenset({"age", "anneal", "normalise"})
_NUMBERS = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
    "twenty",
)  # fmt: skip
# From here a chance of going wrong is a rare one, and needs no fraction. [-]
RARE = 0.04


def is_sent_out(option: OptionOut) -> bool:
    """Return whether a firm hardens it."""
    return option.route.startswith("subcontract")


def is_hardened(option: OptionOut) -> bool:
    """Return whether anything is hardened at all."""
    return option.route_kind not in _UNHARDENED


def zone_name(zone: Zone) -> str:
    """Return what a zone is called in a sentence."""
    return f"the {zone.name}" if zone.name else "the working end"


def duty_words(zone: Zone) -> str:
    """Return what a zone has to do, in a sentence."""
    gives_way = zone.mate is not None and zone.mate.should_wear == "part"
    text = f"{zone_name(zone)} {(_GIVES_WAY if gives_way else _DUTY)[zone.wear]}"
    if zone.mate is not None and zone.wear != "none":
        text += f", {_MATE[zone.mate.should_wear].format(mate=zone.mate.material)}"
    return f"{text[0].upper()}{text[1:]}."


def steel_words(option: OptionOut) -> str:
    """Return a steel as the trade calls it, with what it is: "EN19 (42CrMo4), a … steel"."""
    what = in_sentence(option.family_name.replace(" (gauge plate)", ""))
    if what in option.spoken.lower():
        return option.spoken
    article = "an" if what[0] in "aeiou" or what.startswith(("8", "11 ", "18 ")) else "a"
    return f"{option.spoken}, {article} {what}"


def _heated(option: OptionOut, zone: Zone) -> str:
    """Return what is hardened and by what, short: "the claws alone, by torch"."""
    if not is_hardened(option):
        return _UNHARDENED[option.route_kind]
    words = _HEATED[option.route_kind].format(zone=zone_name(zone))
    if option.source is not None and "forge" in option.source:
        words = words.replace("by torch", "in the forge")
    return words


def way_words(option: OptionOut, zone: Zone) -> str:
    """Return how and where it is hardened, as a cell of the table."""
    if not is_hardened(option):
        return _heated(option, zone)
    words = _heated(option, zone).removeprefix("it ")
    if is_sent_out(option):
        return f"by a firm: {words}"
    bath = "" if option.medium is None else f", in {option.medium.replace('-', ' ')}"
    if option.medium in {"air", "plates"}:
        bath = ""
    return f"here: {words}{bath}"


def done_words(option: OptionOut, zone: Zone) -> str:
    """Return how it is hardened, in a sentence with the workshop as its subject."""
    words = _heated(option, zone)
    if not is_hardened(option):
        return f"It is {words.removeprefix('not hardened: ')}; nothing is hardened."
    if is_sent_out(option):
        verb = "gives it" if words.startswith("a ") else "hardens"
        then = _let_down(option).replace("then warm it", "then warms it")
        then = then.replace("hold it", "holds it")
        return f"A firm {verb} {words}{then}."
    text = f"We harden {words}" if "case" not in words and "skin" not in words else (
        f"We give it {words}"
    )  # fmt: skip
    if option.route_kind in UNQUENCHED:
        text = f"It is {words.removeprefix('it all over, ')}"
    if option.medium is not None and option.route_kind not in UNQUENCHED:
        text += f", {_cooled_words(option.medium)}"
    return f"{text}{_let_down(option)}."


def _let_down(option: OptionOut) -> str:
    """Return the temper as a customer understands it."""
    temper = option.temper
    if temper.temperature_c is None:
        return ""
    if temper.means == "salt":
        return f" and hold it in hot salt at {temper.temperature_c:.0f} °C"
    text = f" and then warm it to {temper.temperature_c:.0f} °C"
    if temper.means == "residual" or temper.time_min is None:
        return f"{text} by the heat left behind, to take the brittleness out"
    how = f"for {temper.time_min:.0f} minutes{_times(temper.cycles)}"
    return f"{text} {how}, to take the brittleness out"


def _cooled_words(medium: str) -> str:
    """Return a quench as a customer understands it: "cool it fast in oil"."""
    words = quenched_words(medium, "it")
    return words.replace("quench it", "cool it fast")


def _times(cycles: int) -> str:
    """Return how often it is done, nothing for once."""
    return {1: "", 2: ", twice", 3: ", three times"}.get(cycles, f", {cycles} times")


def one_in(share: float) -> str:
    """Return how often something goes wrong, in words: "about one in six", "hardly ever"."""
    if share < 0.01:
        return "hardly ever"
    if share < RARE:
        return "seldom"
    if share > 0.45:
        return "about every other time" if share < 0.6 else "more often than not"
    return f"about one time in {_NUMBERS[min(round(1.0 / share), 20) - 1]}"


def goes_wrong(share: float) -> str:
    """Return that something goes wrong so often: "seldom goes wrong"."""
    often = one_in(share)
    return f"{often} goes wrong" if share < RARE else f"goes wrong {often}"


def pieces(count: int) -> str:
    """Return how many parts are made, in words."""
    return "one piece" if count == 1 else f"{count} pieces"


def tried_words(hrc: float) -> str:
    """Return what a new file does on a hardness, as a sentence. [HRC]."""
    return f"A new file tried on it {file_words(hrc).removeprefix('it ')}."


def check_words(step: StepOut, zone: Zone) -> str | None:
    """Return one check of the procedure in plain words, None of one that is no check."""
    means, action = step.means or "", step.action
    if "runs true" in action or "lies flat" in action:
        what = "how true it runs" if "runs true" in action else "how flat it is"
        return f"{what} ({step.length_mm or 0.0:.2f} mm allowed; {step.check})"
    if "crack" in (step.otherwise or ""):
        return "oil and chalk for cracks"
    if step.hardness_hrc is not None and means:
        return f"{means} on {zone_name(zone)}"
    return None
