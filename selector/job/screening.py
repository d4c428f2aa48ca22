"""Why a treatment is turned down before anything is sampled.

One small rule a reason. A rule returns the failed (or unknown) gate, or nothing when it has no
objection; the first objection decides.
"""

from collections.abc import Callable

import numpy as np

from selector.gate import Gate
from selector.job.geometry import as_cooled
from selector.job.hard_section import hard_sections
from selector.job.lead import hot_lead, lead_at_food
from selector.job.response import answers, carbon_fits, limited, plating_holds
from selector.job.sold import stock_rule
from selector.job.treatment import Treatment, is_torched
from selector.kept import per_record
from selector.requirement import Requirement
from selector.requirement.part import Section
from selector.wording import either

# Hopeless beyond this multiple of a heat source's section. Common practice, no source.
HOPELESS = 1.5
# A nitrided layer this deep is there to bear load; a thinner one keeps off scuffing and rust.
BEARING_LAYER_MM = 0.1
# Oil-hardening steel hardens between cold plates up to about this; a flat counts 1.5 times.
# Common practice of knife makers, no source. [mm]
PRESSED_MM = 5.0
# Thinner than this a rod holds too little heat behind its end to temper it. Common practice,
# no source. [mm]
HOLDS_HEAT_MM = 8.0
# Cold steel so many times as thick as the skin quenches it behind a laser. Common practice, no
# source. [-]
SKINS_BEHIND = 10.0


def section_like(section: Section) -> float:
    """Return the round that heats like a section, in mm.

    Parameters
    ----------
    section : Section
        One stretch of the part.

    Returns
    -------
    float
        Diameter of the round that takes a like time to heat: a plate counts as 1.5 times its
        thickness, a tube as twice its wall (common practice).
    """
    if section.shape == "flat":
        width = section.width or section.size
        return min(1.5 * section.size, float(np.sqrt(section.size * width)))
    if section.bore is not None:
        return min(section.size, 1.0 * (section.size - section.bore))
    return 1.1 * section.size if section.shape in {"square", "hexagon"} else section.size


def heated_thickness(asked: Requirement, work: Treatment) -> float:
    """Return the diameter of the round that heats like the thickest section heated. [mm]."""
    return _thickest(asked, local=work.route.extent == "local")


@per_record(64)
def _thickest(asked: Requirement, *, local: bool) -> float:
    """Return the round that heats like the thickest section, of those heated or all. [mm]."""
    sections = as_cooled(asked.part)
    heated = hard_sections(asked) if local else range(len(sections))
    return max(section_like(sections[i]) for i in heated)


def _safety(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to hardening at home what lives depend on."""
    if asked.safety_critical and work.route.place == "workshop":
        text = f"{asked.vital_use}: have it treated by qualified people, or use certified bar"
        return Gate("safety", "fail", text)
    return None


def _stringers(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to free-cutting steel where it is struck, or lives depend on it."""
    if work.steel.kind != "free-cutting":
        return None
    if asked.load.impact == "hammered" or asked.safety_critical:
        text = "free-cutting steel: sulphide and lead stringers split under blows and fatigue"
        return Gate("snap", "fail", text)
    return None


def is_pressed(work: Treatment) -> bool:
    """Return whether steel that is made for oil is pressed between plates instead."""
    hardened, medium = work.steel.hardened, work.medium
    if hardened is None or medium is None or not work.hardens:
        return False
    return medium.kind == "plates" and hardened.quench == "oil"


def _still_air(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to cooling in air what is made for a bath."""
    hardened, medium = work.steel.hardened, work.medium
    if hardened is None or medium is None or not work.hardens:
        return None
    if is_pressed(work) and heated_thickness(asked, work) <= PRESSED_MM:
        return None
    if medium.severity_class == "air" and hardened.quench != "air":
        text = f"made for {hardened.quench}: in air only thin edges harden, and unevenly"
        return Gate("medium", "fail", text)
    return None


# What a workshop calls its heat sources; the rest go by their names in the catalogue.
_SOURCE_NOUN = {
    "muffle-furnace": "furnace",
    "heat-treat-oven": "furnace",
    "hand-torch": "torch",
    "propylene-torch": "torch",
    "oxy-propane": "torch",
    "oxy-acetylene": "torch",
    "charcoal-forge": "forge",
    "kitchen-oven": "oven",
    "salt-bath": "salt pot",
    "induction": "induction heater",
}


def _equipment(asked: Requirement, work: Treatment) -> Gate | None:
    """Object where the workshop lacks the heat, or must not send out."""
    if work.route.place == "subcontract" and not asked.workshop.subcontract:
        return Gate("equipment", "fail", "needs a firm, and nothing is to be sent out")
    if work.route.heat_sources and work.source is None:
        sources = (_SOURCE_NOUN.get(s, s.replace("-", " ")) for s in work.route.heat_sources)
        return Gate("equipment", "fail", f"needs a heat source: {either(sources)}")
    if work.route.media and work.medium is None:
        baths = (slug.replace("-", " ") for slug in work.route.media)
        return Gate("equipment", "fail", f"needs a bath of {either(baths)}")
    return None


def _heating(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to heat that the source cannot give: too hot, too long, too thick."""
    source = work.source
    if source is None:
        return None
    hardened = work.steel.hardened
    target = hardened.temperature_c.low if work.hardens and hardened else 780.0
    if work.route.process in {"case", "anneal", "normalise"} and work.route.temperature_c:
        target = work.route.temperature_c.low
    if source.ceiling_c.value < target + 20:
        text = (
            f"{source.name} reaches about {source.ceiling_c.value:.0f} °C, needs {target:.0f}"
        )
        return Gate("heating", "fail", text)
    return _soak(work) or _thickness(asked, work)


def _soak(work: Treatment) -> Gate | None:
    """Object to a soak that an open flame cannot hold."""
    source, hardened = work.source, work.steel.hardened
    if source is None or hardened is None or not work.hardens:
        return None
    if hardened.quench == "air" and source.kind == "flame":
        # Its carbides of chromium and molybdenum dissolve in a soak, and what a flame heats
        # unevenly cracks where it ends.
        text = "hardens in air after a long even soak, which an open flame cannot hold"
        return Gate("heating", "fail", text)
    if hardened.soak_min is None:
        return None
    if hardened.temperature_c.low > 900 and source.control == "eye":
        text = (
            f"{work.steel.name} needs {hardened.temperature_c.low:.0f} °C with a soak and "
            "protection; a flame judged by colour cannot give it"
        )
        return Gate("heating", "fail", text)
    return None


def _thickness(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to a section beyond the source's reach, where no history of it is worked out."""
    source = work.source
    if source is None or is_torched(work):
        return None
    thickest = heated_thickness(asked, work)
    reach = source.section_mm.value
    if thickest > HOPELESS * reach:
        text = f"{source.name} heats about {reach:g} mm round; this is like {thickest:.0f} mm"
        return Gate("heating", "fail", text)
    return None


def _local(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to hardening a zone where the zone is the whole part, or nothing wants it."""
    if work.route.extent != "local":
        return None
    toothed = any(feature.kind in {"teeth", "edge"} for feature in asked.part.feature)
    whole = len(hard_sections(asked)) == len(asked.part.section)
    # What plays over a whole part heats it whole, teeth and all.
    if whole and is_torched(work):
        return Gate("shape", "fail", "the zone is the whole part: heat it whole")
    stubby = asked.part.length_mm < 4 * max(s.size for s in asked.part.section)
    if whole and stubby and not toothed:
        return Gate("shape", "fail", "the zone is the whole part: harden it whole")
    return None


def _heat_behind(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to tempering by the heat behind an end where there is little or none."""
    if "residual" not in work.route.temper:
        return None
    hard = set(hard_sections(asked))
    behind = [s for i, s in enumerate(as_cooled(asked.part)) if i not in hard]
    if not behind:
        return Gate("heating", "fail", "nothing lies behind the hard end to hold heat")
    thick = max(section_like(section) for section in behind)
    if thick < HOLDS_HEAT_MM:
        text = f"{thick:g} mm holds too little heat behind the end to temper it"
        return Gate("heating", "fail", text)
    return None


def _wall(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to a case that meets in the middle of a thin section."""
    depth = work.route.depth_mm
    if work.route.process != "case" or depth is None:
        return None
    thin = min(
        (s.size - s.bore) / 2 if s.bore else s.size
        for s in (asked.part.section[i] for i in hard_sections(asked))
    )
    # From both sides the thinnest case this route grows takes a third.
    if thin < 6 * depth.low or thin < 3.0:
        text = f"on {thin:g} mm the case takes most of the section: brittle right through"
        return Gate("core", "fail", text)
    return None


def _cold_behind(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to a laser on thin work: no cold steel behind quenches the skin."""
    depth = work.route.depth_mm
    if work.route.kind != "laser" or depth is None:
        return None
    thin = min(2.0 * asked.part.section[i].most_depth_mm for i in hard_sections(asked))
    needed = SKINS_BEHIND * float(np.sqrt(depth.low * depth.high))
    if thin >= needed:
        return None
    text = f"{thin:g} mm warms through under a laser: {needed:.0f} mm quench the skin"
    return Gate("shape", "fail", text)


def _under_layer(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to a nitrided layer that bears load on a core never hardened and tempered."""
    del asked
    depth = work.route.depth_mm
    if work.route.process != "nitride" or depth is None or depth.high < BEARING_LAYER_MM:
        return None
    if work.condition.name == "prehard":
        return None
    text = (
        f"{work.condition.name} core: the layer breaks into it like an eggshell; start from "
        "bar quenched and tempered above the nitriding heat"
    )
    return Gate("core", "fail", text)


def _spring(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to reheating a coil spring that got its strength from drawing."""
    if asked.part.shape_class == "coil-spring" and work.condition.name == "cold-drawn":
        text = "a cold-drawn spring owes its strength to drawing; heat destroys it"
        return Gate("shape", "fail", text) if work.route.process != "none" else None
    return None


RULES: tuple[Callable[[Requirement, Treatment], Gate | None], ...] = (
    answers,
    limited,
    _safety,
    _stringers,
    carbon_fits,
    _equipment,
    _still_air,
    stock_rule,
    _local,
    _heat_behind,
    _wall,
    _cold_behind,
    hot_lead,
    lead_at_food,
    _under_layer,
    plating_holds,
    _spring,
    _heating,
)
