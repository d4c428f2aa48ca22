"""How each field of the catalogue's files is tried: what is altered, and what is asked."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from catalog.steel import Designations

ORIGIN = {"source": "own-estimate", "at": "here", "basis": "estimated", "seen": "memory"}
SHOP = {
    "workshop.heat": [{"source": s} for s in ("oxy-propane", "muffle-furnace", "kitchen-oven")],
    "workshop.bath": [{"medium": medium} for medium in ("water", "oil")],
    "workshop.subcontract": True,
    "load.torque": "40 N m",
    "zone.0.hardness": {"min": "40 HRC"},
}


@dataclass(frozen=True)
class Case:
    """How a field is tried: the entry altered, what is asked, and values that alter it.

    Without `values` the shipped one is scaled, turned or lengthened until it is sound.
    """

    entry: str = ""
    changes: Mapping[str, Any] = field(default_factory=dict)
    steels: tuple[str, ...] = ("c45",)
    route: str | None = "through-furnace"
    values: tuple[Any, ...] = ()
    listing: str | None = None
    key: str = ""


def rack(name, size="40 mm"):
    return {"workshop.stock": [{"steel": name, "size": size}]}


SOFT = {"zone.0.hardness": {"min": "100 HB"}, "load.torque": "20 N m"}
SPRING = rack("old leaf spring")
# Less than the shortest time of a pack gives.
SHALLOW = {"zone.0.depth": "0.05 mm"}
SCRAP = ("old-leaf-spring", "5160", "55cr3", "51crv4", "9260", "250a53", "c45")
DEFAULT = {
    "steels": Case("c45"),
    "routes": Case("through-furnace"),
    "media": Case("oil", steels=("42crmo4",)),
    "heat_sources": Case("muffle-furnace", steels=("42crmo4",)),
    "families": Case("medium-carbon"),
    "cautions": Case("oil-fire", steels=("42crmo4",)),
    "sources": Case("lucefin-cards", listing="steels"),
    "prices": Case(),
    "marks": Case("T", {**SOFT, **rack("817M40T", "200 mm")}, ("817m40",), "prehard"),
}


def span(low, high):
    return {"min": low, "max": high, **ORIGIN}


def number(value):
    return {"value": value, **ORIGIN}


QUIET = {"load.impact": "none", "load.torque": "5 N m"}
COLD = {**SOFT, "load.impact": "none", "limit.service_temperature": "-20 degC"}
PLAIN = {**QUIET, "part.feature": []}
GRIT = {**PLAIN, "zone.0": {"section": [1], "wear": "abrasive", "life_ratio": 3}}
CHECKED = {"zone.0.hardness": {"min": "40 HRC", "max": "44 HRC"}, "workshop.check": ["tester"]}
PIN = {**PLAIN, "part.section.0.size": "16 mm", "part.section.1.size": "16 mm"}
TORCH = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven"}]}
FLAT = {
    **PLAIN,
    "part.section.0": {"shape": "flat", "size": "8 mm", "width": "150 mm", "length": "30 mm"},
}
WIRE = {
    **PLAIN,
    "part.name": "return spring",
    "part.shape_class": "coil-spring",
    "part.section.0.size": "3 mm",
    "part.section.1.size": "3 mm",
    "zone.0.wear": "none",
}
SILVER, OIL_TOOL, COLD_TOOL = ("115crv3",), ("100mncrw4",), ("x153crmov12",)


def bath(medium="oil", **of_it):
    return {"workshop.bath": [{"medium": medium, **of_it}]}


# How fields are tried that an ordinary furnace-hardened shaft does not read.
CASES: dict[str, Case] = {
    "steels.called": Case("115crv3", PIN, SILVER),
    "steels.family": Case("c45", values=("high-carbon",)),
    "steels.summary": Case("c45", listing="steels"),
    "steels.corrosion": Case("c45", {"limit.corrosion": "severe"}),
    **{
        f"steels.designations.{system}": Case("c45", listing="steels", values=(["Altered"],))
        for system in Designations.model_fields
    },
    **{
        f"steels.composition_wt_pct.{element}": Case("c45", values=(span(low, high),))
        for element, low, high in (
            ("Cr", 0.8, 1.2), ("Mo", 0.2, 0.3), ("Ni", 0.8, 1.2), ("V", 0.1, 0.2),
            ("W", 0.5, 0.8), ("Cu", 0.3, 0.35),
        )
    },
    "steels.temperature_c.transition": Case("42crmo4", COLD, ("42crmo4",), "prehard"),
    "steels.temperature_c.anneal": Case(
        "c55", {"part.condition": "hard"}, ("c55",), values=(span(650, 660),)
    ),
    "steels.temperature_c.normalise": Case(
        "c55", SOFT, ("c55",), "normalise", (span(870, 880),)
    ),
    "steels.hardened.soak_min": Case("100mncrw4", PIN, OIL_TOOL, values=(span(5, 10),)),
    "steels.strength_hb": Case(
        "42crmo4", {**SOFT, **rack("42CrMo4+QT")}, ("42crmo4",), "prehard",
        ([{"mark": "QT", "to_mm": 100.0, **span(266, 280)}],),
    ),
    "steels.window.names": Case(
        "42crmo4", {**SOFT, **rack("4140")}, ("42crmo4",), "prehard", (["4140H"],)
    ),
    "steels.window.differs": Case("42crmo4", {**SOFT, **rack("4140")}, ("42crmo4",), "prehard"),
    "steels.window.composition_wt_pct.*": Case(
        "42crmo4", rack("4140 annealed"), ("42crmo4",), values=(span(0.2, 0.25),), key="C"
    ),
    "marks.hardness_hb": Case(
        "U", {**SOFT, **rack("708M40U")}, ("42crmo4",), "prehard", (span(290, 300),)
    ),
    "routes.time_h": Case("pack-carburise", SHALLOW, ("16mncr5",), "carburise"),
    "steels.hardened.as_quenched_hrc": Case("115crv3", QUIET, SILVER, values=(span(58, 60),)),
    "steels.hardened.section_limit_mm.water": Case(
        "115crv3", {**PIN, **bath("water")}, SILVER
    ),
    "steels.hardened.section_limit_mm.oil": Case("100mncrw4", QUIET, OIL_TOOL),
    "steels.hardened.section_limit_mm.air": Case(
        "x100crmov5", QUIET, ("x100crmov5",), values=(number(20),)
    ),
    **{
        f"steels.tempered.{name}": Case("100mncrw4", QUIET, OIL_TOOL)
        for name in ("curve_hrc", "time_h", "cycles")
    },
    **{
        f"steels.tempered.{name}": Case("x153crmov12", QUIET, COLD_TOOL, values=values)
        for name, values in (
            ("hardened_c", (950.0,)), ("heat.hardened_c", (1200.0,)), ("heat.curve_hrc", ()),
        )
    },
    **{
        f"steels.aged.{name}": Case(
            "x5crnicunb16-4", {**QUIET, "zone.0.hardness": {"min": "30 HRC"}},
            ("x5crnicunb16-4",), "age",
        )
        for name in ("curve_hrc", "time_h")
    },
    **{
        f"steels.nitrided.{name}": Case("31crmo12", QUIET, ("31crmo12",), "nitride", values)
        for name, values in (("surface_hv", ()), ("depth_mm", (span(0.05, 0.1),)))
    },
    **{
        f"steels.carbide_vol_pct.{name}": Case(
            "100mncrw4", GRIT, OIL_TOOL, values=(span(5, 8),)
        )
        for name in ("M7C3", "M6C", "MC")
    },
    "steels.embrittlement_c": Case("c45", values=([span(150, 600)],)),
    "steels.condition.name": Case("c45", route=None, values=("normalised", "annealed")),
    "steels.condition.hardness_hb": Case("42crmo4", SOFT, ("42crmo4",), "as-bought"),
    "steels.condition.shapes": Case("100mncrw4", FLAT, OIL_TOOL, values=(["round"],)),
    "steels.condition.size_mm": Case("100mncrw4", QUIET, OIL_TOOL, values=(span(30, 40),)),
    "steels.condition.surface": Case("42crmo4", SOFT, ("42crmo4",), "as-bought"),
    "steels.condition.availability": Case("42crmo4", SOFT, ("42crmo4",), "as-bought"),
    **{
        f"steels.condition.{name}": Case(
            "linear-shaft", PLAIN, ("linear-shaft",), "buy-hard-element"
        )
        for name in ("hardness_hrc", "depth_mm")
    },
    "steels.condition.length_mm": Case(
        "linear-shaft", PLAIN, ("linear-shaft",), "buy-hard-element", (span(5, 6),)
    ),
    "steels.condition.sold_mm": Case(
        "linear-shaft", PLAIN, ("linear-shaft",), "buy-hard-element",
        ({"values": [99.0], **ORIGIN},),
    ),
    "steels.condition.sold_for": Case(
        "linear-shaft", PLAIN, ("linear-shaft",), "buy-hard-element", (["bolt"],)
    ),
    "steels.condition.drawn_mpa": Case(
        "music-wire", WIRE, ("music-wire",), "prehard",
        ([{"at_mm": 3.0, **span(1500, 1600)}],),
    ),
    "steels.likely.steel": Case("old-leaf-spring", SPRING, SCRAP, values=("c45",)),
    "steels.likely.share": Case(
        "old-leaf-spring", SPRING, SCRAP, values=({"value": 0.9, **ORIGIN},)
    ),
    "steels.limitation.process": Case("c45", values=("quench",)),
    "steels.limitation.verdict": Case("c45", route="carburise"),
    "steels.limitation.why": Case("c45", route="carburise"),
    "steels.limitation.caution": Case(
        "115crv3", PIN, SILVER, values=("spring-under-load",)
    ),
    "routes.conditions": Case("through-furnace", steels=("42crmo4",)),
    "routes.extent": Case("local-torch", TORCH, route="local-torch"),
    "routes.summary": Case("through-furnace", listing="routes"),
    "routes.temperature_c": Case("pack-carburise", {}, ("16mncr5",), "carburise"),
    "routes.depth_mm": Case(
        "pack-carburise", {}, ("16mncr5",), "carburise", values=(span(5, 10),)
    ),
    "routes.temper": Case("through-furnace", values=([],)),
    "routes.cold_c": Case(
        "through-furnace-cold", QUIET, OIL_TOOL, "through-furnace-cold",
        ({"value": -20.0, **ORIGIN},),
    ),
    "routes.carburiser": Case("pack-carburise", {}, ("16mncr5",), "carburise"),
    "routes.surface_hrc": Case("pack-carburise", {}, ("16mncr5",), "carburise"),
    "routes.place": Case("through-furnace", values=("subcontract",)),
    "media.name": Case("oil", bath(volume="0.5 l"), ("42crmo4",)),
    "media.kind": Case("oil", values=("brine",)),
    **{
        f"media.severity_per_in.{motion}": Case(
            "oil", bath(agitation=motion), values=(span(1.5, 1.6),)
        )
        for motion in ("none", "mild", "moderate", "strong", "violent")
    },
    "heat_sources.name": Case("muffle-furnace", QUIET, ("hs6-5-2",)),
    "heat_sources.kind": Case("muffle-furnace", values=("salt-bath",)),
    "heat_sources.ceiling_c": Case("muffle-furnace", values=(number(700),)),
    "heat_sources.section_mm": Case("muffle-furnace", values=(number(5),)),
    "heat_sources.soak_max_min": Case(
        "oxy-propane", {**QUIET, **TORCH}, SILVER, "through-torch", (number(1),)
    ),
    "heat_sources.cautions": Case(
        "oxy-propane", TORCH, ("42crmo4",), "through-torch", (["salt-bath-water"],)
    ),
    "heat_sources.gas_per_h_kg": Case("oxy-propane", TORCH, route="through-torch"),
    "sources.citation": Case("lucefin-cards", listing="steels"),
    "sources.remark": Case("lucefin-cards", listing="steels", values=("Altered",)),
    "prices.minimum_length_mm": Case("", QUIET, values=(900.0,)),
    "prices.default_per_kg": Case("", QUIET, ("mine",), values=(99.0,)),
    "prices.steel_per_kg.*": Case("", SOFT, ("s235",), "as-bought", key="s235"),
    "prices.condition_factor.*": Case("", SOFT, ("42crmo4",), "prehard", key="prehard"),
    "families.usual": Case(
        "medium-carbon", QUIET, ("c45", "080m40"), values=("c45", "080m40")
    ),
    "prices.gas_per_kg": Case("", TORCH, route="through-torch"),
    "prices.practice.heat_by_flame_h": Case("", TORCH, route="through-torch"),
    "prices.practice.skin_black_bar_h": Case("", QUIET, ("42crmo4",)),
    "prices.practice.ground_bar_saves_h": Case("", PIN, SILVER),
    "prices.practice.removal_prehard_factor": Case("", SOFT, ("42crmo4",), "prehard"),
    "prices.practice.retemper_fraction": Case("", CHECKED),
    "prices.practice.order_days": Case("", SOFT, ("40crmnmo7",), "prehard"),
    "prices.practice.rare_days": Case("", QUIET, ("s5",)),
    "prices.wrapping": Case("", QUIET, ("x100crmov5",)),
    "prices.subcontract_per_h.*": Case(
        "", QUIET, ("31crmo12",), "nitride", key="subcontract-nitride"
    ),
    **{
        f"prices.{name}": Case("", PLAIN, ("linear-shaft",), "buy-hard-element")
        for name in ("hard_element_per_kg", "practice.removal_hard_factor")
    },
    **{
        f"prices.{name}": Case(
            "", QUIET, ("42crmo4",), "subcontract", values, key="subcontract-vacuum"
        )
        for name, values in (
            ("carriage", ()), ("subcontract_minimum.*", ()), ("subcontract_per_kg.*", (500.0,)),
            ("practice.rework_subcontract_fraction", ()),
        )
    },
}  # fmt: skip
