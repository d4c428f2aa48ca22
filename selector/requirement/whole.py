"""The whole requirement, and the rules that join its parts."""

from typing import Literal, Self

from pydantic import Field, model_validator

from selector.kept import per_record
from selector.requirement import mate_name, part_name, trade_name
from selector.requirement.bending import flexes
from selector.requirement.load import Limit, Load
from selector.requirement.measuring import surely_measures
from selector.requirement.part import ROUNDING_MM, Part, Section
from selector.requirement.priority import Priorities
from selector.requirement.quantity import Asked, refuse_at
from selector.requirement.trade_name import does
from selector.requirement.workshop import Workshop
from selector.requirement.zone import LEAST_WEAR, Zone

SafetyUse = Literal[
    "none", "could hurt", "brake", "steering", "lifting", "pressure", "fast rotation"
]
# No edge is so thick. Common practice. [mm]
PLATE_MM = 5.0
# What wears an edge or a point.
CUTTING = frozenset({"abrasive", "edge-impact"})
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
        return self.safety_use in CRITICAL_USES or trade_name.carries_lives(self.part.name)

    @property
    def vital_use(self) -> str:
        """What lives depend on it for: as it is said or, where that is nothing, by its name."""
        said = self.safety_use in CRITICAL_USES
        return self.safety_use if said else "lives may hang on it by its name"

    @property
    def is_spring(self) -> bool:
        """Whether the part is a spring: by shape, by name, or as it bends."""
        return _is_spring(self)

    @property
    def is_named_spring(self) -> bool:
        """Whether the part is a spring by its name, and nothing wears it much."""
        return self.hardly_wears and trade_name.is_spring(self.part.name)

    @property
    def hardly_wears(self) -> bool:
        """Whether nothing wears, or rubs more than lightly; an edge wears."""
        least = {LEAST_WEAR} if self.has_edge else {LEAST_WEAR, ("abrasive", "light")}
        return all(
            zone.wear == "none" or (zone.wear, zone.severity) in least for zone in self.zone
        )

    @property
    def is_folded_spring(self) -> bool:
        """Whether a spring is bent sharp, by its name: as one leaf folded upon itself."""
        return self.is_spring and does(self.part.name, "folded_spring")

    @property
    def presses(self) -> bool:
        """Whether a part shears, pierces or forms metal under a press or a lever, unhammered.

        By its name, or by an edge that is to outlast the sheet, strip or bar it works.
        """
        if self.load.impact == "hammered" or does(self.part.name, "backs"):
            return False
        # Where a force is stated, a face that rubs on sheet forms it.
        works = {"edge-impact"} | ({"sliding"} if self.load.axial else set())
        return trade_name.presses(self.part.name) or any(
            zone.wear in works
            and zone.mate is not None
            and zone.mate.should_wear == "mate"
            and mate_name.is_worked(zone.mate.material)
            for zone in self.zone
        )

    @property
    def has_edge(self) -> bool:
        """Whether a part surely ends in an edge or a point that cuts.

        By its features, by what the shop calls the stretch that wears, or as a tool that is
        nothing without one.
        """
        if any(feature.kind == "edge" for feature in self.part.feature):
            return True
        called = any(
            part_name.ends_edged(section.name)
            for zone in self.zone
            if zone.wear in CUTTING
            for section in self.sections_of(zone)
            if section.name is not None
        )
        return called or trade_name.is_edged(self.part.name)

    @property
    def is_edged(self) -> bool:
        """Whether a part has an edge or a point, or its name says so and nothing denies it.

        A thick plate without one that grit wears is a plate, whatever it is called.
        """
        if self.has_edge:
            return True
        return trade_name.may_be_edged(self.part.name) and not self._is_plate

    @property
    def _is_plate(self) -> bool:
        """Whether what grit wears is too thick for an edge, and has neither taper nor teeth."""
        formed = any(feature.kind in {"taper", "teeth"} for feature in self.part.feature)
        return not formed and all(
            zone.wear == "abrasive"
            and min(s.narrowest_mm for s in self.sections_of(zone)) >= PLATE_MM
            for zone in self.zone
            if zone.wear in CUTTING
        )

    @property
    def cuts_metal(self) -> bool:
        """Whether an edge cuts metal: by its name, or by what it is to outlast."""
        mates = [zone.mate.material for zone in self.zone if zone.mate is not None]
        named = does(self.part.name, "cuts_metal")
        return self.is_edged and (
            (named and not any(map(mate_name.is_no_metal, mates)))
            or any(
                zone.wear == "abrasive"
                and zone.mate is not None
                and zone.mate.should_wear == "mate"
                and mate_name.is_metal(zone.mate.material)
                for zone in self.zone
            )
        )

    @property
    def measures(self) -> bool:
        """Whether a part measures or sets: by its name, or lapped where it slides lightly."""
        return _measures(self)

    @property
    def surely_measures(self) -> bool:
        """Whether a part is finished to measure or to fit, whatever its name."""
        return surely_measures(self)

    @property
    def rubs(self) -> bool:
        """Whether a part is a tool that forms or polishes the work by rubbing on it."""
        return does(self.part.name, "rubs")

    @property
    def is_to_break(self) -> bool:
        """Whether a part is there to break before something dearer does, by its name."""
        return does(self.part.name, "breaks")

    @property
    def works_ground(self) -> bool:
        """Whether a part works the ground, where stones strike what the grit wears."""
        return _works_ground(self)

    def sections_of(self, zone: Zone) -> tuple[Section, ...]:
        """Return the sections a zone lies on."""
        return tuple(self.part.section[index - 1] for index in zone.section)


# Each is asked of every option.
@per_record(32)
def _is_spring(asked: Requirement) -> bool:
    """Return whether a part is a spring."""
    if asked.part.shape_class == "coil-spring" or asked.is_named_spring:
        return True
    # A spanner of sheet bends on edge.
    bends = flexes(asked.part, asked.load) and not does(asked.part.name, "turns_by_hand")
    return asked.hardly_wears and bends


@per_record(32)
def _measures(asked: Requirement) -> bool:
    """Return whether a part measures or sets."""
    return asked.surely_measures or trade_name.measures(asked.part.name)


@per_record(32)
def _works_ground(asked: Requirement) -> bool:
    """Return whether a part works the ground."""
    worn = [zone for zone in asked.zone if zone.wear == "abrasive"]
    lightly = all(zone.severity == "light" for zone in worn)
    mates = [zone.mate.material for zone in worn if zone.mate is not None]
    if any(map(mate_name.is_bench_work, mates)):
        return False
    dug = any(map(mate_name.is_soil, mates)) or (
        asked.load.impact == "light" and any(map(mate_name.is_stony, mates))
    )
    named = trade_name.works_ground(asked.part.name, lightly=lightly)
    # What shapes clay lightly is a potter's; what garden soil wears digs.
    if lightly:
        dug = any(mate_name.is_of(mate, "soil") for mate in mates)
    return bool(worn) and (named or dug)
