"""Of which kind of steel, treated how, the trade makes what: the tables of custom.

A merit by duty and by kind of steel; what is not named is not made so. Common practice of
toolrooms and repair shops, no source.
"""

from collections.abc import Mapping
from typing import Literal, get_args

from selector.duty.merit import ALSO, SELDOM, USUAL
from selector.duty.named_duty import Duty

Make = Literal[
    "as bought", "prehard", "element", "hardened", "skin", "case", "nitrided", "aged"
]

_U, _A, _S = USUAL, ALSO, SELDOM
_TOOL_EDGE = {
    "water-tool": _U, "oil-tool": _U, "high-carbon": _U, "air-tool": _A, "high-speed": _A,
    "bearing": _A, "martensitic-stainless": _S, "shock-tool": _S, "spring": _S,
    "hot-work-tool": _S,
}  # fmt: skip
_STRUCK_EDGE = {
    "shock-tool": _U, "water-tool": _U, "high-carbon": _U, "spring": _U, "oil-tool": _S,
    "medium-carbon": _S, "hot-work-tool": _S, "air-tool": _S, "alloy": 0.2,
}  # fmt: skip
THROUGH: Mapping[Duty, Mapping[str, float]] = {
    "struck edge": _STRUCK_EDGE,
    "pressed edge": {**_STRUCK_EDGE, "oil-tool": _U, "air-tool": _U, "hot-work-tool": _A},
    "cutting edge": _TOOL_EDGE,
    # Saws, card scrapers: of strip hardened by its maker, or of ground stock.
    "strip blade": {
        "high-carbon": _U, "spring": _U, "water-tool": _S, "oil-tool": _A,
        "martensitic-stainless": _S,
    },
    "grit": {
        "oil-tool": _U, "air-tool": _U, "water-tool": _U, "bearing": _U, "high-carbon": _A,
        "high-speed": _A, "shock-tool": _A, "spring": _S, "medium-carbon": _S, "alloy": _S,
        "martensitic-stainless": _S, "hot-work-tool": _S,
    },
    # Boron steel goes before other alloys, which are dear to wear away in the ground.
    "soil": {
        "spring": _U, "medium-carbon": _U, "alloy": _S, "high-carbon": _A, "shock-tool": _A,
        "water-tool": _S, "bearing": 0.2, "oil-tool": 0.2,
    },
    "gear": {"alloy": _A, "medium-carbon": _S, "oil-tool": _S},
    "rolling": {
        "bearing": _U, "oil-tool": _A, "air-tool": _A, "water-tool": _A, "high-speed": _S,
        "high-carbon": _S, "martensitic-stainless": _S, "medium-carbon": _S, "alloy": _S,
    },
    "struck body": {
        "shock-tool": _U, "medium-carbon": _U, "alloy": _U, "water-tool": _A, "spring": _A,
        "high-carbon": _A, "oil-tool": _S, "hot-work-tool": _A,
    },
    "struck face": {
        "water-tool": _U, "oil-tool": _U, "shock-tool": _U, "high-carbon": _A, "spring": _A,
        "medium-carbon": _A, "bearing": _A, "air-tool": _A, "alloy": _S, "hot-work-tool": _S,
    },
    "spring": {"spring": _U, "high-carbon": _U, "water-tool": _S, "martensitic-stainless": _S},
    # Small drivers and bits are made of the ground rod that lies in every shop.
    "drive": {
        "alloy": _U, "medium-carbon": _U, "shock-tool": _A, "spring": _A, "water-tool": _A,
        "oil-tool": _A, "hot-work-tool": _S,
    },
    "sliding": {
        "water-tool": _U, "medium-carbon": _U, "alloy": _A, "oil-tool": _U, "bearing": _A,
        "martensitic-stainless": _S, "high-carbon": _A, "air-tool": _A, "spring": _S,
        "shock-tool": _S, "hot-work-tool": _S,
    },
    "plain": {"alloy": _A, "medium-carbon": _A, "spring": _S, "martensitic-stainless": _S},
    "key": {},
    "gauge": {
        "oil-tool": _U, "air-tool": _U, "bearing": _U, "water-tool": _A, "high-speed": _S,
        "martensitic-stainless": _A, "high-carbon": _S,
    },
    "pressed face": {
        "oil-tool": _U, "air-tool": _U, "shock-tool": _A, "water-tool": _A, "bearing": _A,
        "high-speed": _A, "hot-work-tool": _S, "high-carbon": _S, "martensitic-stainless": _S,
        "medium-carbon": _S, "alloy": _A,
    },
    # Burnishers, spinning tools, flaring cones: polished, they mark whatever they rub on.
    "rubbing tool": {
        "water-tool": _U, "oil-tool": _U, "high-carbon": _A, "bearing": _A, "air-tool": _A,
        "high-speed": _A, "shock-tool": _S, "martensitic-stainless": _S, "spring": _S,
        "hot-work-tool": _S, "medium-carbon": 0.2, "alloy": 0.2,
    },
    "tool": {
        "water-tool": _U, "oil-tool": _U, "shock-tool": _U, "spring": _A, "high-carbon": _A,
        "medium-carbon": _A, "alloy": _A, "bearing": _A, "air-tool": _A, "hot-work-tool": _S,
        "martensitic-stainless": _S,
    },
}  # fmt: skip
# A skin by flame or induction over a core as bought: carbon and alloy steel of 0.35 % and more.
SKIN: Mapping[Duty, Mapping[str, float]] = {
    "gear": {"alloy": _A, "medium-carbon": _A},
    "rolling": {"alloy": _A, "medium-carbon": _A, "bearing": _S},
    "grit": {"alloy": _A, "medium-carbon": _A},
    "sliding": {"alloy": _U, "medium-carbon": _U, "bearing": _S},
    "pressed face": {"alloy": _A, "medium-carbon": _S},
}
_CASE: Mapping[Duty, float] = {
    "gear": _U, "rolling": _U, "sliding": _U, "struck body": _A, "grit": _A, "drive": _A,
    "soil": _S, "gauge": _A, "pressed face": 0.2, "rubbing tool": _A,
}  # fmt: skip
# Bar of free-cutting or structural steel is cased where nothing better is at hand.
_CASED: Mapping[str, float] = {"case-hardening": 1.0, "mild": 0.8, "free-cutting": 0.5}
_NITRIDED: Mapping[Duty, float] = {
    "sliding": _U, "gear": _A, "grit": _A, "gauge": _S, "pressed face": _U,
    "rubbing tool": _S,
}  # fmt: skip
_PREHARD: Mapping[Duty, float] = {
    "plain": _U, "drive": _A, "sliding": _A, "struck body": _A, "gear": _A, "soil": _A,
    "grit": _S, "pressed face": _S,
}  # fmt: skip
_AS_BOUGHT: Mapping[Duty, float] = {
    "plain": _U, "key": _U, "sliding": _A, "drive": _S, "gear": _A, "soil": _S,
    "struck body": 0.2,
}  # fmt: skip
# Of what plain parts are left soft: nobody burns tool steel on a bracket.
_LEFT_SOFT = {
    "mild": 1.0, "medium-carbon": 1.0, "free-cutting": 1.0, "case-hardening": 0.8, "alloy": 0.7,
    "austenitic-stainless": 0.6, "martensitic-stainless": 0.4, "nitriding": 0.4,
    "other": 0.1,
}  # fmt: skip

# Die block bought hard is for dies, hard strip and wire for springs.
_DELIVERED = {"other": 1.0, "hot-work-tool": 0.3, "spring": 0.3, "high-carbon": 0.3}

# Plate delivered for wear lines chutes and edges; it is cut and welded, not made into tools.
WEAR_PLATE = "wear-plate"
LINED: Mapping[Duty, float] = {"grit": _U, "soil": _U, "plain": _S}
# Rollers of sine bars, pins over which is measured: bought ground and hard.
_ELEMENT: Mapping[Duty, float] = {
    "sliding": _U, "rolling": _A, "plain": _A, "gauge": _A, "rubbing tool": _S,
}  # fmt: skip
# Where lives depend on it: certified bar, quenched and tempered by the mill, or tough and soft.
CERTIFIED: Mapping[Make, Mapping[str, float]] = {
    "prehard": {"alloy": _U, "precipitation-hardening": _S, "martensitic-stainless": _S},
    "as bought": {"mild": _S, "medium-carbon": _S, "alloy": _S},
}
_AGED: Mapping[Duty, float] = dict.fromkeys(get_args(Duty), SELDOM)
# By duty, and by kind of steel, of what is neither hardened through nor in a skin by heat.
MADE: Mapping[Make, Mapping[Duty, float]] = {
    "case": _CASE, "nitrided": _NITRIDED, "aged": _AGED, "element": _ELEMENT,
    "prehard": _PREHARD, "as bought": _AS_BOUGHT,
}  # fmt: skip
KINDS: Mapping[Make, Mapping[str, float]] = {
    "case": _CASED, "nitrided": {"nitriding": 1.0, "other": 0.8}, "aged": {"other": 1.0},
    "element": {"other": 1.0}, "prehard": _DELIVERED, "as bought": _LEFT_SOFT,
}  # fmt: skip
