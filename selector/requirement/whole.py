"""The whole requirement, and the rules that join its parts."""

import re
from typing import Literal, Self

from pydantic import Field, model_validator

from selector.requirement.load import Limit, Load
from selector.requirement.part import ROUNDING_MM, Part, Section
from selector.requirement.priority import Priorities
from selector.requirement.quantity import Asked, refuse_at
from selector.requirement.workshop import Workshop
from selector.requirement.zone import Zone

SafetyUse = Literal[
    "none", "could hurt", "brake", "steering", "lifting", "pressure", "fast rotation"
]
# What shears, pierces or coins by its corners under a press or a lever, by its name.
_PRESSES = re.compile(
    r"\b(punch(?:es)?|dies?|shears?|croppers?|nibblers?|guillotines?|anvils?)\b"
    r"(?!.*\b(holder|shank|set|plate)\b)"
    r"|\bdraw(?:ing)?[- ]?(?:rings?|plates?)\b|\b(?:coining|embossing)\b",
    re.IGNORECASE,
)
# What measures or sets by its faces, by its name.
_MEASURES = re.compile(
    r"\b(ga?uges?|setting (?:ring|plug|master)s?|parallels?|v-?[ -]?blocks?|sine bars?|"
    r"straight[- ]?edges?|(?:micrometer|caliper|comparator) (?:anvil|face|jaw|pin)s?)\b"
    r"(?!.*\b(holder|stand|case|box|housing|clamp|screw)\b)",
    re.IGNORECASE,
)
# A face lapped to less than this is there to measure or to fit. Common practice. [mm]
FITTED_MM = 0.02
# A tool that its name says has an edge or a point, whether or not that is among its features;
# what only holds or turns such a tool has none.
_EDGED = re.compile(
    r"\b(chisel|centre punch|center punch|axe|hatchet|adze|gouge|graver|burin|scriber|knife|"
    r"blade|plane iron|scraper|reamer|tap|d-bit|drill bit|cutter|hardy|bolster|hot set|"
    r"cold set|form tool|parting tool|turning tool|boring tool|countersink|counterbore|hob|"
    r"broach|snips|shears|nippers|pincers|spokeshave|drawknife|sickle|scythe|billhook|machete|"
    r"cleaver|auger|gimlet|burr|bradawl)s?\b"
    r"(?!.*\b(holder|wrench|handle|shank|guard|arbor|wheel|block)\b)",
    re.IGNORECASE,
)
# What a blade, a cutter or a knife has when it cuts nothing.
_BLUNT = re.compile(
    r"\b(mix(?:ing|er)?|stirr(?:ing|er)|fan|turbine|propeller|agitator|paddle)\b", re.IGNORECASE
)
# A spring that is bent sharp to its shape, by its name.
_FOLDED = re.compile(r"\b(v|u|hairpin|folded|bent)[- ]springs?\b", re.IGNORECASE)
# What digs or cuts the ground, by its name: stones strike it.
_GROUND = re.compile(
    r"\b(plough|plow|share|tine|harrow|hoe|spade|shovel|mattock|pick|pickaxe|coulter|digger|"
    r"bucket (?:tooth|teeth|edge)|grader|ripper|flail|mower blade|subsoiler|cultivator|"
    r"dibber|dibble|drag|trowel|pug[- ]?mill|clay|earth|auger|stump|ditch(?:er|ing)?)s?\b",
    re.IGNORECASE,
)
# A spring may rub lightly.
LEAST_WEAR = ("sliding", "light")
CRITICAL_USES = frozenset({"brake", "steering", "lifting", "pressure", "fast rotation"})


class Requirement(Asked):
    """All that is asked of one part. Safety use has no default: it must be answered."""

    safety_use: SafetyUse = Field(
        title="What happens if it breaks?",
        description="What lives depend on is referred to qualified people.",
    )
    part: Part = Field(title="The part")
    zone: tuple[Zone, ...] = Field(
        min_length=1,
        max_length=30,
        title="Zones",
        description="Each a stretch of the part with one duty.",
    )
    load: Load = Field(title="What does it carry?")
    limit: Limit = Field(default=Limit(), title="What must it keep to?")
    workshop: Workshop = Field(title="Workshop")
    priorities: Priorities = Field(default=Priorities(), title="What matters most?")

    def __hash__(self) -> int:
        """Return the hash of its sizes: equal requirements have equal ones, and it is quick."""
        return hash((self.part.name, *(section.size for section in self.part.section)))

    @model_validator(mode="after")
    def _zones_on_part(self) -> Self:
        count = len(self.part.section)
        rule = f"at most {count}, the last section of the part"
        step = "Count sections from 1 at the working end."
        beyond: list[tuple[tuple[str | int, ...], int, str, str]] = [
            (("zone", number, "section", place), index, rule, step)
            for number, zone in enumerate(self.zone)
            for place, index in enumerate(zone.section)
            if index > count
        ]
        beyond += [
            (("load", name, place), index, rule, step)
            for name in ("torque_over", "bending_over")
            for place, index in enumerate(getattr(self.load, name) or ())
            if index > count
        ]
        if beyond:
            raise refuse_at("Requirement", *beyond)
        return self

    @model_validator(mode="after")
    def _depths_in_steel(self) -> Self:
        deep = []
        for number, zone in enumerate(self.zone):
            most = max(section.most_depth_mm for section in self.sections_of(zone))
            if zone.depth is not None and zone.depth > most + ROUNDING_MM:
                rule = f"at most {most:g} mm, which is hard through"
                step = "Write that to have it hard through, or leave depth out."
                deep.append((("zone", number, "depth"), f"{zone.depth:g} mm", rule, step))
        if deep:
            raise refuse_at("Requirement", *deep)
        return self

    @property
    def safety_critical(self) -> bool:
        """Whether a failure of the part endangers life in the ordinary course of its use."""
        return self.safety_use in CRITICAL_USES

    @property
    def is_spring(self) -> bool:
        """Whether the part is a spring: by its shape, or by its name where nothing wears."""
        named = re.search(r"\bsprings?\b", self.part.name, re.IGNORECASE)
        worn = any(
            zone.wear != "none" and (zone.wear, zone.severity) != LEAST_WEAR
            for zone in self.zone
        )
        return self.part.shape_class == "coil-spring" or (named is not None and not worn)

    @property
    def is_folded_spring(self) -> bool:
        """Whether a spring is bent sharp, by its name: as one leaf folded upon itself."""
        return self.is_spring and _FOLDED.search(self.part.name) is not None

    @property
    def presses(self) -> bool:
        """Whether a part shears, pierces or coins under a press or a lever, not a hammer."""
        return self.load.impact != "hammered" and _PRESSES.search(self.part.name) is not None

    @property
    def is_edged(self) -> bool:
        """Whether a part has an edge or a point, by its features or by its name."""
        if any(feature.kind == "edge" for feature in self.part.feature):
            return True
        name = self.part.name
        return _EDGED.search(name) is not None and _BLUNT.search(name) is None

    @property
    def measures(self) -> bool:
        """Whether a part measures or sets: by its name, or lapped where it slides lightly."""
        lapped, runout = "lap" in self.part.finish_after, self.limit.runout
        worn = {(zone.wear, zone.severity) for zone in self.zone if zone.wear != "none"}
        fitted = lapped and runout is not None and runout <= FITTED_MM and worn == {LEAST_WEAR}
        return fitted or _MEASURES.search(self.part.name) is not None

    @property
    def works_ground(self) -> bool:
        """Whether a part works the ground, where stones strike what the grit wears."""
        worn = any(zone.wear == "abrasive" for zone in self.zone)
        return worn and _GROUND.search(self.part.name) is not None

    def sections_of(self, zone: Zone) -> tuple[Section, ...]:
        """Return the sections a zone lies on."""
        return tuple(self.part.section[index - 1] for index in zone.section)
