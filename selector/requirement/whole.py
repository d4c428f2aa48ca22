"""The whole requirement, and the rules that join its parts."""

from typing import Literal, Self

from pydantic import Field, model_validator

from selector.requirement import part_name
from selector.requirement.load import Limit, Load
from selector.requirement.part import ROUNDING_MM, Part, Section
from selector.requirement.priority import Priorities
from selector.requirement.quantity import Asked, refuse_at
from selector.requirement.workshop import Workshop
from selector.requirement.zone import Zone

SafetyUse = Literal[
    "none", "could hurt", "brake", "steering", "lifting", "pressure", "fast rotation"
]
# A face lapped to this, a thou and a bit, is there to measure or to fit. Common practice. [mm]
FITTED_MM = 0.03
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
        worn = any(
            zone.wear != "none" and (zone.wear, zone.severity) != LEAST_WEAR
            for zone in self.zone
        )
        return self.part.shape_class == "coil-spring" or (
            part_name.is_spring(self.part.name) and not worn
        )

    @property
    def is_folded_spring(self) -> bool:
        """Whether a spring is bent sharp, by its name: as one leaf folded upon itself."""
        return self.is_spring and part_name.is_folded(self.part.name)

    @property
    def presses(self) -> bool:
        """Whether a part shears, pierces or coins under a press or a lever, not a hammer."""
        return self.load.impact != "hammered" and part_name.presses(self.part.name)

    @property
    def is_edged(self) -> bool:
        """Whether a part has an edge or a point, by its features or by its name."""
        if any(feature.kind == "edge" for feature in self.part.feature):
            return True
        return part_name.is_edged(self.part.name)

    @property
    def measures(self) -> bool:
        """Whether a part measures or sets: by its name, or lapped where it slides lightly."""
        lapped, runout = "lap" in self.part.finish_after, self.limit.runout
        worn = {(zone.wear, zone.severity) for zone in self.zone if zone.wear != "none"}
        fine = runout is not None and runout <= FITTED_MM
        # What is lapped and is to outlast the steel it touches is tried on it again and again.
        mates = [zone.mate for zone in self.zone if zone.mate is not None]
        spared = any(
            mate.should_wear == "mate" and part_name.is_ferrous(mate.material) for mate in mates
        )
        # A gauge turns nothing.
        idle = not self.load.torque
        fitted = lapped and idle and (fine or spared) and worn == {LEAST_WEAR}
        return fitted or part_name.measures(self.part.name)

    @property
    def rubs(self) -> bool:
        """Whether a part is a tool that forms or polishes the work by rubbing on it."""
        return part_name.rubs(self.part.name)

    @property
    def is_to_break(self) -> bool:
        """Whether a part is there to break before something dearer does, by its name."""
        return part_name.breaks(self.part.name)

    @property
    def works_ground(self) -> bool:
        """Whether a part works the ground, where stones strike what the grit wears."""
        worn = any(zone.wear == "abrasive" for zone in self.zone)
        return worn and part_name.works_ground(self.part.name)

    def sections_of(self, zone: Zone) -> tuple[Section, ...]:
        """Return the sections a zone lies on."""
        return tuple(self.part.section[index - 1] for index in zone.section)
