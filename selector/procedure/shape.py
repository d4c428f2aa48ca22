"""The shape that goes into the heat: corners rounded, holes packed, stock left on."""

from itertools import accumulate, pairwise

from selector.hazards.decarburisation import Atmosphere, soft_skin
from selector.job.geometry import as_cooled
from selector.procedure.doing import Doing
from selector.procedure.practice import (
    BLUNT_MM,
    BROKEN_MM,
    COMMON,
    CORNER_MM,
    LEAST_STOCK_MM,
)
from selector.procedure.protection import protection
from selector.record import StepOut
from selector.requirement.part import Feature

# What a file or stone takes off; a grinder or lap leaves a truer face.
GRINDS = frozenset({"toolpost-grinder", "surface-grinder", "lap", "oilstone"})
# A fillet up to this, or a tenth of the smaller section. Common practice. [mm]
LARGEST_CORNER_MM = 3.0
# In the bottom of a keyway or slot, as its cutter leaves it at best. Common practice. [mm]
IN_CUT_MM = 0.3
# A cutter thicker than this keeps its form and is left with stock on its faces. COMMON. [mm]
THIN_EDGE_MM, FACE_MM = 8.0, 0.2


def rounded(do: Doing) -> StepOut:
    """Return what is done to corners, edges and marks before the heat."""
    shoulders, cuts = _shoulders(do), _sharp(do)
    corners = _shoulder_words(shoulders)
    corners += [f"{words} to R{IN_CUT_MM:g}" for words in cuts]
    words = f"Round {', '.join(corners)}, break" if corners else "Break"
    return StepOut(
        stage="prepare",
        action=f"{words} every edge {BROKEN_MM:g} mm, polish out scratches lengthwise"
        + (_blunt(do) if do.has_edge else ""),
        means="file, emery",
        check="no line catches a fingernail",
        length_mm=max((radius for _, radius in shoulders), default=BROKEN_MM),
        source=COMMON,
    )


def _blunt(do: Doing) -> str:
    """Return how a cutting edge is left for the heat."""
    if do.thinnest_mm > THIN_EDGE_MM:
        return f"; leave {FACE_MM:g} mm on the cutting faces, to be ground when hard"
    least = max(min(BLUNT_MM, 0.3 * do.thinnest_mm), 0.2)
    return f"; leave the cutting edge {least:.1f} mm thick, to be formed when hard"


def _corner_mm(do: Doing) -> float:
    """Return the radius of an inside corner that the drawing leaves open. [mm]."""
    tenth = 0.1 * min(section.size for section in do.part.section)
    return round(min(max(tenth, 0.3), max(CORNER_MM, tenth), LARGEST_CORNER_MM), 1)


def _shoulders(do: Doing) -> list[tuple[float, float]]:
    """Return where the shoulders of the part are, and the radius of each. [mm]."""
    ends, open_mm = accumulate(section.length for section in do.part.section), _corner_mm(do)
    return [
        (at, round(left.fillet or right.fillet or open_mm, 2))
        for at, (left, right) in zip(ends, pairwise(do.part.section), strict=False)
        if left.size != right.size
    ]


def _shoulder_words(shoulders: list[tuple[float, float]]) -> list[str]:
    """Return the shoulders in words, those of one radius together."""
    places: dict[float, list[str]] = {}
    for at, radius in shoulders:
        places.setdefault(radius, []).append(f"{at:g}")
    if not places:
        return []
    first, *others = (
        f"at {_listed(where)} mm to R{radius:g}" for radius, where in places.items()
    )
    return [f"the shoulder{'s' if len(shoulders) > 1 else ''} {first}", *others]


def _listed(names: list[str]) -> str:
    """Return names as a sentence lists them: "80, 90 and 95"."""
    return " and ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)


def _sharp(do: Doing) -> list[str]:
    """Return keyways, slots and corners in words."""
    kinds = {f.kind for f in do.part.feature} & {"keyway", "slot", "sharp-corner", "groove"}
    return [f"the {kind.replace('-', ' ')} corners".replace("corner corners", "corners")
            for kind in sorted(kinds)]  # fmt: skip


def _is_hot(do: Doing, feature: Feature) -> bool:
    """Return whether a feature lies where the part comes to hardening heat."""
    if not do.is_local or feature.at is None:
        return True
    ends, near = do.prediction.hard_ends_mm, 0.5 * do.thick_mm
    first = min([do.zone_start_mm, *ends]) if do.zone_start_mm > 0.0 else 0.0
    return first - near <= feature.at <= max([do.zone_end_mm, *ends]) + near


def _is_packed(do: Doing, feature: Feature) -> bool:
    """Return whether a feature is packed: a hot thread, or a hot hole deeper than wide."""
    if feature.kind not in {"cross-hole", "thread"} or not _is_hot(do, feature):
        return False
    through_mm = do.part.section[do.part.place(feature)].narrowest_mm
    return feature.kind == "thread" or feature.size is None or feature.size < through_mm


def plugged(do: Doing) -> list[StepOut]:
    """Return how holes and threads that get hot are filled; a cold hole is left alone."""
    if not (do.work.hardens or do.work.route.process == "case"):
        return []
    hot = [f for f in do.part.feature if _is_packed(do, f)]
    dry = do.work.medium is not None and do.work.medium.severity_class == "air"
    if not hot or dry or do.work.route.place != "workshop":
        return []
    names = []
    for feature in hot:
        size = f" Ø{feature.size:g}" if feature.size and feature.kind == "cross-hole" else ""
        at = f" at {feature.at:g} mm" if feature.at is not None else ""
        names.append(f"{feature.kind.replace('cross-', '')}{size}{at}")
    with_what = (
        "fireclay, and leave it dry" if do.work.source is not None else "steel wool and clay"
    )
    return [
        StepOut(
            stage="prepare",
            action=f"Pack the {', '.join(dict.fromkeys(names))} with {with_what}",
            means="fireclay",
            check="dry right through: wet clay spits",
            length_mm=hot[0].size or do.part.section[do.part.place(hot[0])].narrowest_mm,
            source=COMMON,
        )
    ]


def skin_left_mm(do: Doing) -> float:
    """Return the soft skin that the heat leaves in a bad case, scale included. [mm]."""
    set_up, source = do.set_up, do.work.source
    if set_up is None or source is None:
        return 0.0
    kind: Atmosphere = "open-furnace" if source.kind == "furnace" else "flame"
    if protection(do) in {"foil", "coat", "pack"}:
        kind = "pack"
    skin = soft_skin(set_up.heat_c, set_up.hold_s + (set_up.to_heat_s or 0.0) / 4.0, kind)
    return float(skin.soft_mm + 0.5 * skin.scale_mm) * 2.0


def finishing_tools(do: Doing) -> str:
    """Return what the part is finished with when hard: as the user says, else a grinder."""
    tools = do.part.finish_after or tuple(m for m in do.shop.machine if "grind" in m)[:1]
    return ", ".join(tool.replace("-", " ") for tool in tools)


def left_mm(do: Doing) -> float:
    """Return what is left on working faces to finish when hard, as asked or as usual. [mm]."""
    if do.work.condition.name == "hard-element":
        # It is bought ground to its size.
        return 0.0
    if do.part.stock_removal is not None:
        return do.part.stock_removal
    can = GRINDS & set(do.part.finish_after) or any("grind" in name for name in do.shop.machine)
    worn = do.job.asked.zone[do.lead.zone].wear not in {"none", "edge-impact"}
    if not (can and worn and do.work.hardens) or do.has_edge:
        return 0.0
    return max(LEAST_STOCK_MM, round(skin_left_mm(do) / 0.05) * 0.05)


def left_on(do: Doing) -> list[StepOut]:
    """Return the step that leaves stock on working faces, none where nothing is left."""
    stock = left_mm(do)
    if stock <= 0.0:
        return []
    return [
        StepOut(
            stage="prepare",
            action=f"Leave {stock:.2f} mm a side on working faces, to be ground when hard; the "
            "rest to size",
            means=finishing_tools(do) or "grinder",
            check="measured and written down",
            length_mm=round(stock, 2),
            source=COMMON,
        )
    ]


def is_plate(do: Doing) -> bool:
    """Return whether the part is shorter than it is thick, as a disc or a gear is."""
    cooled = zip(as_cooled(do.part), do.part.section, strict=True)
    return all(like != section for like, section in cooled)
