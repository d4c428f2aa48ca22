"""Hold the advice against everyday parts and what the trade would take for them.

    python tests/benchmarks/everyday_parts.py [NAME ...]

Parts and workshops are invented; what a good hand would take, and what would make him angry, is
common practice without a source. A pattern names the options that serve, by their ids.
"""

import re
import sys

import numpy as np

from catalog import load_catalog
from selector.advice.advise import advise
from selector.requirement import requirement_from

# ruff: noqa
S = lambda shape, size, length, **k: dict(
    shape=shape,
    size=f"{size} mm",
    length=f"{length} mm",
    **{a: (f"{b} mm" if isinstance(b, (int, float)) else b) for a, b in k.items()},
)
OIL = {"medium": "oil", "volume": "15 l", "temperature": "50 degC"}
WATER = {"medium": "water", "volume": "20 l", "temperature": "20 degC"}
WARM = {"medium": "warm-water", "volume": "30 l", "temperature": "35 degC"}
HAND = dict(
    heat=[{"source": "hand-torch"}],
    bath=[WATER, OIL],
    measure=["eye", "magnet"],
    light="dim",
    check=["file"],
    machine=["lathe"],
    turns_part=True,
    held_by="lathe",
)
HANDOV = {
    **HAND,
    "heat": [{"source": "hand-torch"}, {"source": "kitchen-oven", "ceiling": "250 degC"}],
}
FORGE = dict(
    heat=[{"source": "forge"}],
    bath=[WARM, OIL],
    measure=["eye", "magnet"],
    light="shade",
    check=["file"],
    machine=["lathe"],
    held_by="tongs",
)
KILN = dict(
    heat=[{"source": "kiln"}, {"source": "kitchen-oven", "ceiling": "250 degC"}],
    bath=[OIL, {"medium": "plates"}],
    measure=["thermocouple"],
    light="dim",
    check=["file", "hardness-files"],
    machine=["lathe", "mill", "surface grinder"],
    held_by="tongs",
)
OXY = dict(
    heat=[{"source": "oxy-propane"}, {"source": "kitchen-oven", "ceiling": "250 degC"}],
    bath=[OIL, WATER],
    measure=["eye", "magnet", "crayon"],
    light="dim",
    check=["file", "hardness-files"],
    machine=["lathe", "mill"],
    turns_part=True,
    held_by="lathe",
)
OXYNO = {**OXY, "heat": [{"source": "oxy-propane"}]}
NONE = dict(heat=[], machine=["lathe", "mill"], subcontract=True)


def stock(*names):
    out = []
    for n in names:
        n = n if isinstance(n, tuple) else (n, None)
        out.append(
            {
                k: v
                for k, v in dict(
                    steel=n[0], condition=n[1], size="40 mm", evidence="receipt"
                ).items()
                if v
            }
        )
    return out


def P(
    name, sections, zones, load, shop, rack=(), feature=(), limit=None, safety="none", **part
):
    return dict(
        safety_use=safety,
        part=dict(name=name, section=sections, feature=list(feature), **part),
        zone=zones,
        load=load,
        workshop={**shop, "stock": stock(*rack)},
        **({"limit": limit} if limit else {}),
    )


Z = lambda s, w, sev=None, **k: dict(
    section=s, wear=w, **({"severity": sev} if sev else {}), **k
)
L = lambda i="none", c="occasional", **k: dict(impact=i, cycles=c, **k)
EDGE = {"kind": "edge", "at": "0 mm"}
PARTS = {
    "centre punch": (
        P(
            "Centre punch",
            [S("round", 10, 25), S("round", 10, 85)],
            [Z([1], "edge-impact", "medium"), Z([2], "none")],
            L("hammered"),
            HAND,
            ["silver steel"],
            [EDGE],
        ),
        r"^(115crv3|c105u|c80u|60wcrv8|50crmov13-15)/.*(torch|residual)",
        (52, 61),
        r"-(150|175|200)c-|^(c45|42crmo4)",
    ),
    "pin punch": (
        P(
            "Pin punch 6 mm",
            [S("round", 6, 40), S("round", 12, 80, fillet=2)],
            [Z([1], "edge-impact", "light"), Z([2], "none")],
            L("hammered"),
            HANDOV,
            ["silver steel", "EN24"],
        ),
        r"^(115crv3|60wcrv8|c105u|51crv4|100mncrw4|817m40)/",
        (48, 59),
        r"-(150|175|200)c-",
    ),
    "tommy bar": (
        P(
            "Tommy bar",
            [S("round", 10, 160)],
            [Z([1], "none")],
            L("none", "occasional", bending="25 N m"),
            OXY,
            ["EN8", "silver steel"],
        ),
        r"as-bought|prehard-bar",
        None,
        r"torch|residual|115crv3",
    ),
    "hammer": (
        P(
            "Hammer head 1 kg",
            [S("square", 28, 25), S("square", 28, 60)],
            [Z([1], "edge-impact", "medium", name="face"), Z([2], "none", name="eye")],
            L("hammered"),
            FORGE,
            ["C45", "EN19"],
            [{"kind": "cross-hole", "at": "55 mm", "size": "16 mm"}],
        ),
        r"^(c45|c50|c55|c60|080m40|41cr4|42crmo4)/.*(torch|residual)",
        (46, 58),
        r"-(150|175|200)c-|prehard-bar|carbur",
    ),
    "screwdriver": (
        P(
            "Screwdriver 8 mm",
            [S("flat", 1.2, 15, width=8), S("round", 8, 100, fillet=2)],
            [Z([1], "none", hardness={"min": "50 HRC", "max": "56 HRC"}), Z([2], "none")],
            L("light", "occasional", torque="2 N m"),
            HAND,
            ["silver steel"],
        ),
        r"^(115crv3|51crv4|100mncrw4|c60|c75s|c80u|60wcrv8)/",
        (48, 58),
        r"^(16mncr5|c15|s235)",
    ),
    "bush": (
        P(
            "Bush 30/20",
            [S("tube", 30, 30, bore=20)],
            [Z([1], "sliding", "medium")],
            L("none", "fatigue"),
            KILN,
            ["16MnCr5", "EN8"],
        ),
        r"^16mncr5/.*carburise",
        (56, 63),
        r"^(080m40|x)",
    ),
    "pivot pin": (
        P(
            "Pivot pin, greased",
            [S("round", 25, 90)],
            [Z([1], "sliding", "medium")],
            L("light", "fatigue", bending="150 N m"),
            NONE,
            ["EN24T"],
            limit={"runout": "0.05 mm"},
        ),
        r"induction|nitride|carburise|^817m40|linear-shaft",
        None,
        r"^(100mncrw4|115crv3|x100|x153|hs6)",
    ),
    "jig bush": (
        P(
            "Drill jig bush",
            [S("tube", 20, 25, bore=10)],
            [Z([1], "abrasive", "medium")],
            L(),
            KILN,
            ["gauge plate", "EN8"],
        ),
        r"^(100mncrw4|115crv3|90mncrv8|c105u|100cr6)/.*(furnace|marquench)",
        (58, 65),
        r"^(080m40|x)",
    ),
    "die": (
        P(
            "Blanking die",
            [S("flat", 20, 60, width=60)],
            [Z([1], "abrasive", "medium")],
            L("light"),
            KILN,
            ["gauge plate", "S235"],
            [{"kind": "cross-hole", "at": "30 mm", "size": "12 mm"}],
        ),
        r"^(100mncrw4|90mncrv8)/.*(furnace|marquench)",
        (57, 63),
        r"^(s235|x)",
    ),
    "leaf spring": (
        P(
            "Latch spring, leaf",
            [S("flat", 1.6, 70, width=12)],
            [Z([1], "none")],
            L("none", "fatigue", bending="0.5 N m"),
            KILN,
            ["C75S", "silver steel"],
        ),
        r"^c75s/",
        (42, 53),
        r"as-bought|^115crv3",
    ),
    "leaf spring own": (
        P(
            "Flat spring for a lock",
            [S("flat", 1.0, 70, width=10)],
            [Z([1], "sliding", "light")],
            L("none", "fatigue"),
            HANDOV,
            ["C75S"],
        ),
        r"^c75s/",
        (42, 54),
        r"as-bought",
    ),
    "shear blade": (
        P(
            "Shear blade",
            [S("flat", 8, 200, width=40)],
            [Z([1], "edge-impact", "medium")],
            L("light", "fatigue"),
            KILN,
            ["gauge plate"],
            [EDGE],
        ),
        r"^(100mncrw4|60wcrv8|50crmov13-15|90mncrv8|x100crmov5)/.*(furnace|marq)",
        (53, 60),
        r"^(c45|42crmo4|16mn)",
    ),
    "drive adapter": (
        P(
            "Square drive adapter",
            [S("square", 19, 22), S("round", 28, 40, fillet=2)],
            [Z([1], "none"), Z([2], "none")],
            L("light", "occasional", torque="300 N m"),
            OXY,
            ["EN24", "O1"],
        ),
        r"^817m40/",
        (38, 51),
        r"^100mncrw4|as-bought",
    ),
    "bracket": (
        P(
            "Wall bracket",
            [S("flat", 8, 200, width=40)],
            [Z([1], "none")],
            L("none", "static", bending="60 N m"),
            OXY,
            ["gauge plate", "S235"],
        ),
        r"^(s235|070m20)/.*as-bought",
        None,
        r"^100mncrw4|torch",
    ),
    "lathe centre": (
        P(
            "Dead centre for a lathe",
            [S("round", 18, 20), S("round", 18, 60)],
            [Z([1], "sliding", "heavy"), Z([2], "none")],
            L(),
            OXY,
            ["silver steel", "EN8"],
            [{"kind": "taper", "at": "5 mm"}],
            limit={"runout": "0.02 mm"},
            finish_after=["toolpost-grinder"],
        ),
        r"^(115crv3|100mncrw4|c105u|100cr6)/.*torch",
        (57, 65),
        r"^(080m40|s235)",
    ),
    "cam": (
        P(
            "Cam for an automatic lathe",
            [S("round", 60, 12)],
            [Z([1], "rolling-contact", "medium", depth="0.6 mm")],
            L("none", "fatigue"),
            KILN,
            ["16MnCr5", "EN8"],
            [{"kind": "keyway", "at": "6 mm", "size": "5 mm"}],
        ),
        r"^16mncr5/.*carburise",
        (57, 63),
        r"^080m40",
    ),
    "rocker shaft": (
        P(
            "Rocker shaft 16 mm",
            [S("round", 16, 150)],
            [Z([1], "sliding", "medium")],
            L("none", "fatigue", bending="30 N m"),
            NONE,
            [],
            limit={"runout": "0.03 mm"},
        ),
        r"linear-shaft|induction|nitride",
        None,
        r"vacuum",
    ),
    "rocker shaft 15": (
        P(
            "Rocker shaft 15.5 mm",
            [S("round", 15.5, 150)],
            [Z([1], "sliding", "medium")],
            L("none", "fatigue", bending="30 N m"),
            NONE,
            [],
            limit={"runout": "0.03 mm"},
        ),
        r"induction|nitride|carburise",
        None,
        r"linear-shaft|vacuum",
    ),
    "kitchen knife": (
        P(
            "Kitchen knife blade",
            [S("flat", 2.5, 180, width=30), S("flat", 2.5, 80, width=15)],
            [Z([1], "abrasive", "light"), Z([2], "none")],
            L(),
            KILN,
            [],
            [EDGE],
            limit={"corrosion": "mild"},
        ),
        r"^(x105crmo17|x46cr13|x50)/",
        (54, 62),
        r"^(c45|16mncr5)",
    ),
    "scriber": (
        P(
            "Scriber point 4 mm",
            [S("round", 4, 15), S("round", 4, 100)],
            [Z([1], "abrasive", "light"), Z([2], "none")],
            L(),
            HAND,
            ["silver steel"],
            [EDGE],
        ),
        r"^115crv3/.*(torch|residual)",
        (56, 66),
        r"^c5",
    ),
    "lifting pin": (
        P(
            "Shackle pin for a hoist",
            [S("round", 20, 80)],
            [Z([1], "sliding", "light")],
            L("light", "fatigue", bending="200 N m"),
            OXY,
            [("42CrMo4", "prehard"), "silver steel"],
            safety="lifting",
        ),
        r"^(42crmo4|817m40|34crnimo6|4340|605m36)/prehard/prehard-bar",
        None,
        r"torch|x5|115",
    ),
    "boring bar": (
        P(
            "Boring bar shank",
            [S("round", 20, 180)],
            [Z([1], "none")],
            L("none", "static", bending="40 N m"),
            OXY,
            ["EN8", "EN24T"],
        ),
        r"as-bought|prehard-bar",
        None,
        r"torch",
    ),
    "hot cut": (
        P(
            "Hot cut for the anvil",
            [S("flat", 6, 40, width=40), S("square", 25, 60, fillet=4)],
            [Z([1], "edge-impact", "heavy"), Z([2], "none")],
            L("hammered"),
            FORGE,
            ["C60", "unknown"],
            [EDGE],
        ),
        r"^(c60|51crv4|60wcrv8|c80u|55cr3|x40crmov5-1)/",
        (48, 58),
        r"-(150|175|200)c-",
    ),
    "pinion": (
        P(
            "Pinion, module 3",
            [S("round", 60, 40), S("round", 30, 60, fillet=2)],
            [Z([1], "rolling-contact", "heavy", depth="0.9 mm"), Z([2], "none")],
            L("light", "fatigue", torque="300 N m"),
            NONE,
            ["16MnCr5", "EN24T"],
            [{"kind": "teeth", "at": "20 mm"}],
        ),
        r"^(16mncr5|18crnimo7-6|20nicrmo2-2|655m13).*carburise",
        (57, 64),
        r"vacuum",
    ),
    "roller": (
        P(
            "Cam follower roller",
            [S("tube", 25, 15, bore=10)],
            [Z([1], "rolling-contact", "heavy")],
            L("none", "fatigue"),
            KILN,
            ["100Cr6", "EN8"],
        ),
        r"^100cr6/.*furnace",
        (58, 64),
        r"nitride|^080m40",
    ),
    "flat key": (
        P(
            "Parallel key 8 x 7",
            [S("flat", 7, 40, width=8)],
            [Z([1], "none")],
            L("light", "occasional", torque="60 N m"),
            KILN,
            ["EN8", "gauge plate"],
        ),
        r"^(080m40|c45|s235).*as-bought",
        None,
        r"furnace|^100mn",
    ),
    "cotter": (
        P(
            "Cotter for a crank, to wear before the shaft",
            [S("round", 10, 40)],
            [
                Z(
                    [1],
                    "sliding",
                    "light",
                    mate={
                        "material": "crankshaft",
                        "hardness": "28 HRC",
                        "should_wear": "part",
                    },
                )
            ],
            L("light", "fatigue"),
            OXY,
            ["EN3B", "silver steel"],
        ),
        r"as-bought",
        None,
        r"torch|115",
    ),
    "reamer": (
        P(
            "Taper reamer for wood",
            [S("round", 14, 60), S("round", 12, 50)],
            [Z([1], "abrasive", "medium"), Z([2], "none")],
            L(torque="5 N m"),
            OXY,
            ["silver steel"],
            [EDGE],
            limit={"runout": "0.1 mm"},
        ),
        r"^115crv3/.*torch",
        (57, 64),
        r"^c5",
    ),
    "form tool": (
        P(
            "Form tool for brass",
            [S("flat", 6, 20, width=20), S("flat", 6, 60, width=20)],
            [Z([1], "abrasive", "medium"), Z([2], "none")],
            L(),
            HANDOV,
            ["gauge plate"],
            [EDGE],
        ),
        r"^100mncrw4/.*torch",
        (57, 65),
        r"^c",
    ),
    "dog clutch": (
        P(
            "Dog clutch half",
            [S("round", 45, 12), S("round", 30, 40, fillet=2)],
            [Z([1], "edge-impact", "medium"), Z([2], "none")],
            L("light", "fatigue", torque="120 N m"),
            KILN,
            ["16MnCr5", "EN24"],
            [{"kind": "teeth", "at": "6 mm"}],
        ),
        r"^(16mncr5.*carburise|817m40|42crmo4)",
        (50, 62),
        r"^(x|115)",
    ),
    "vice jaw": (
        P(
            "Vice jaw plate",
            [S("flat", 10, 100, width=30)],
            [Z([1], "abrasive", "light")],
            L("light"),
            KILN,
            ["EN8", "gauge plate"],
            [{"kind": "cross-hole", "at": "20 mm", "size": "9 mm"}],
        ),
        r"^(100mncrw4|080m40|16mncr5|c45)/",
        (48, 62),
        r"^x",
    ),
    "stainless shaft": (
        P(
            "Pump shaft, brine",
            [S("round", 12, 120)],
            [Z([1], "sliding", "light")],
            L("none", "fatigue", torque="5 N m"),
            NONE,
            [],
            limit={"corrosion": "severe"},
        ),
        r"^x5crnimo17-12-2/|^x5crnicunb16-4/",
        None,
        r"^x8|42crmo4",
    ),
}


def accepted(option, want, hrc, never):
    """Return whether an option is one that a good hand would take."""
    middle = float(np.median(option.judged.prediction.surface_hrc))
    fits = hrc is None or hrc[0] <= middle <= hrc[1]
    return bool(re.search(want, option.id)) and not re.search(never, option.id) and fits


def main(only):
    """Print a line a part, then how many are right at first, among three, and how many anger."""
    known, count = load_catalog(), np.zeros(4, dtype=int)
    for name, (data, want, hrc, never) in PARTS.items():
        if only and name not in only:
            continue
        options = advise(requirement_from(data), known).options
        good = [accepted(option, want, hrc, never) for option in options]
        angry = bool(options and re.search(never, options[0].id))
        count += [1, bool(good and good[0]), any(good[:3]), angry]
        shown = ", ".join(option.id for option in options[:3])
        print(f"{name:18} {'first' if good and good[0] else '-':6} {'ANGRY ' * angry}{shown}")
    print("{} parts: first choice right {}, one of three {}, angry {}".format(*count))


if __name__ == "__main__":
    main(sys.argv[1:])
