"""The chief risk of an option: the gate with the least in hand, in a few words."""

from selector.decision.option import Option
from selector.figure import median

_WORDS = {
    "hard_enough": "too soft",
    "not_too_hard": "too hard",
    "depth": "too shallow",
    "strength": "too weak for the load",
    "cracking": "quench crack",
    "snap": "snaps or chips in use",
    "movement": "moves too far",
    "budget": "over the budget",
    "heating": "at the end of the heat source's reach",
}


def chief_risk(option: Option) -> str:
    """Return what is likeliest to go wrong.

    Parameters
    ----------
    option : Option
        A ranked option.

    Returns
    -------
    str
        Words, with the share of draws where there is one.
    """
    drawn = [g for g in option.judged.gates if g.share is not None and g.name in _WORDS]
    unknown = [g for g in option.judged.gates if g.share is None and g.verdict != "pass"]
    if unknown:
        return unknown[0].text
    if not drawn:
        return "wear or load beyond what was stated"
    weakest = min(drawn, key=lambda g: float(g.share or 0.0))
    chance = 100 * (1 - float(weakest.share or 0.0))
    if chance < 0.5:
        sensitivity = median(option.judged.values[:, 5])
        if sensitivity > 2:
            return f"a misread colour: {sensitivity:.0f} HRC for 25 °C"
        return "none above 1 in 200"
    return f"{_WORDS[weakest.name]} ({chance:.0f} in 100)"
