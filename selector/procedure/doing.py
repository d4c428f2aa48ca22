"""One option as it is done: what was judged of it, and the workshop it is done in."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from catalog.heat_source import HeatSource
from catalog.steel import Steel
from selector.hardening.bath_response import POSITIONS
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.screening import heated_thickness
from selector.job.treatment import Temper, Treatment, is_torched
from selector.option.prediction import Prediction
from selector.option.preparation import prepare
from selector.option.set_up import alike, at_torch
from selector.option.temper_choice import Choice
from selector.record import SetUpOut
from selector.requirement.part import Part
from selector.requirement.workshop import Bath, Check, Workshop
from selector.torch.residual_heat import RESIDUAL_HEAT, Dip

# A rebound tester reads nothing true of what is lighter or thinner, however it is clamped.
# Makers' sheets (from memory). [kg], [mm]
REBOUND_KG, REBOUND_MM = 0.05, 5.0


@dataclass(frozen=True, eq=False)
class Doing:
    """One option as it is done."""

    job: Job
    prediction: Prediction
    choice: Choice
    set_up: SetUpOut | None

    @property
    def work(self) -> Treatment:
        """What is done to which steel."""
        return self.prediction.treatment

    @property
    def steel(self) -> Steel:
        """Which steel."""
        return self.work.steel

    @property
    def temper(self) -> Temper:
        """Its temper."""
        return self.prediction.temper

    @property
    def part(self) -> Part:
        """What is made."""
        return self.job.asked.part

    @property
    def shop(self) -> Workshop:
        """Where."""
        return self.job.asked.workshop

    @property
    def lead(self) -> Demand:
        """The demand that sets the treatment."""
        return self.job.leading

    @property
    def is_local(self) -> bool:
        """Whether the zone alone is hardened."""
        return self.work.route.extent == "local"

    @property
    def is_struck(self) -> bool:
        """Whether it takes a hammer."""
        return self.job.asked.load.impact == "hammered"

    @cached_property
    def thick_mm(self) -> float:
        """The thickest section that is heated."""
        return heated_thickness(self.job.asked, self.work)

    @property
    def thinnest_mm(self) -> float:
        """The thinnest section."""
        return min(section.narrowest_mm for section in self.part.section)

    @property
    def is_slender(self) -> bool:
        """Whether it is many times longer than thick."""
        return self.part.length_mm >= 4.0 * max(s.size for s in self.part.section)

    @property
    def kept_bath(self) -> Bath | None:
        """The workshop's own bath of the medium, if it has one."""
        slug = self.work.medium.slug if self.work.medium else None
        return next((bath for bath in self.shop.bath if bath.medium == slug), None)

    @property
    def checks(self) -> tuple[Check, ...]:
        """What the workshop tests this part by: it takes no rebound where it is too light."""
        light = self.job.mass_kg < REBOUND_KG or self.thinnest_mm < REBOUND_MM
        return tuple(name for name in self.shop.check if name != "rebound" or not light)

    @property
    def furnaces(self) -> tuple[HeatSource, ...]:
        """The furnaces of the workshop."""
        return tuple(s for s in self.job.bench.sources if s.kind == "furnace")

    @property
    def has_edge(self) -> bool:
        """Whether the part cuts."""
        return any(feature.kind == "edge" for feature in self.part.feature)

    @property
    def zone_end_mm(self) -> float:
        """How far from the working end the sections that harden reach."""
        return sum(s.length for s in self.part.section[: max(self.job.hard) + 1])

    @property
    def zone_start_mm(self) -> float:
        """Where from the working end the sections that harden begin."""
        return sum(s.length for s in self.part.section[: min(self.job.hard)])

    @cached_property
    def quenched_hrc(self) -> float | None:
        """How hard the surface should be as quenched, at the middle; None of no quench."""
        fresh = prepare(self.work, self.job.middle()).fresh
        if fresh is None:
            return None
        return float(fresh.hrc[0, self.job.lead_section * len(POSITIONS)])

    @property
    def surface_hrc(self) -> tuple[float, float]:
        """How hard the surface comes out, 5 to 95 in 100."""
        # As fine as the record has it: what is rounded twice says another whole number.
        low, high = np.quantile(self.prediction.surface_hrc, (0.05, 0.95))
        return round(float(low), 3), round(float(high), 3)

    @cached_property
    def dip(self) -> Dip | None:
        """The dip after which the heat behind the end runs back, if there is one."""
        if self.work.route.slug != RESIDUAL_HEAT or not is_torched(self.work):
            return None
        return at_torch(self.job, alike(self.work)).dip
