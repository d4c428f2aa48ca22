"""The chief risk of an option: the gate it passes least often, in a few words."""

from selector.decision.option import Option
from selector.wording import in_100

_WORDS = {
    "hard_enough": "too soft",
    "not_too_hard": "too hard",
    "depth": "too shallow",
    "slack": "a slack quench",
    "strength": "too weak for the load",
    "cracking": "quench crack",
    "snap": "snaps or chips in use",
    "movement": "bows too far",
    "heating": "not at heat all over, or an edge too hot",
}

# A smaller chance of failing a gate is no risk to name. [-]
_LEAST_CHANCE = 0.005
# A change of hardness for a misread colour worth naming. [HRC]
_SENSITIVE_HRC = 2.0


def chief_risk(option: Option) -> str:
    """Return what is likeliest to go wrong, in words, with its chance where there is one."""
    skin = option.judged.prediction.skin
    # What is counted as wrapped has no such skin: the wrapping is a step of the work.
    wrapped = skin is not None and skin.bare_mm > 0
    gates = [g for g in option.judged.gates if not (wrapped and g.name == "skin")]
    unknown = next((g for g in gates if g.share is None and g.verdict != "pass"), None)
    if unknown is not None:
        return unknown.text
    chances = {g.name: 1 - g.share for g in gates if g.share is not None and g.name in _WORDS}
    if not chances:
        return "wear or load beyond what was stated"
    likeliest = max(chances, key=lambda name: chances[name])
    if chances[likeliest] >= _LEAST_CHANCE:
        return f"{_WORDS[likeliest]} ({in_100(chances[likeliest])})"
    sensitivity_hrc = option.judged.value("operator_sensitivity")
    if sensitivity_hrc > _SENSITIVE_HRC:
        return f"a misread colour: {sensitivity_hrc:.0f} HRC for 25 °C"
    return "nothing above 1 in 200"
