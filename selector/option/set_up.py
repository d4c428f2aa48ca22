"""How a part is heated at a torch: the reach and the hold that serve, chosen once an option.

The set-up chosen here is the one that is forecast, judged, printed and plotted.
"""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from catalog.heat_source import HeatSource
from selector.hardening.bath_response import POSITIONS
from selector.hardening.hard_depth import Limit, hard_depth_mm
from selector.hardening.kind import start
from selector.heat.boiling import Quench
from selector.heat.steel_property import SteelClass
from selector.job.demand import Demand
from selector.job.job import Job, per_part
from selector.job.process import (
    SPRAYED,
    ReadingError,
    hardening_heat,
    quench,
    reading_error,
)
from selector.job.screening import heated_thickness
from selector.job.treatment import Treatment
from selector.metallurgy.hardening_heat import structure_of
from selector.option.tried_heat import zone_hrc
from selector.requirement import Requirement
from selector.requirement.workshop import Workshop
from selector.sampling import Normals
from selector.torch.course import USUAL_HOLD_S, least_past_mm
from selector.torch.part import Torching, torching
from selector.torch.probe import Probes, probes
from selector.torch.residual_heat import RESIDUAL_HEAT, Dip, dip_for, water_line_mm
from selector.torch.response import (
    HOLD_LOG_SD,
    Library,
    SetUp,
    dipped,
    library,
)

Floats = NDArray[np.float64]

# How long the heat may be held. [s]
HOLDS_S = (10.0, 20.0, 40.0, 80.0, 150.0)
# So long a hand holds each millimetre of a part heated all over, even to the middle:
# longer where carbide has to dissolve. Common practice, no source. [s/mm]
EVEN_S_PER_MM, RICH_S_PER_MM = 2.0, 5.0
# Once it is of one colour to the middle nobody holds work in a flame or fire for longer: it
# scales and loses its carbon. Common practice, no source. [s]
ONCE_EVEN_S = 30.0
# Nobody aims at a heat more finely; steels that share one share its forecast. [°C]
STEP_C = 10.0
# A longer hold is taken only for more than this: no file feels less. Estimate. [HRC]
WORTH_HRC = 1.0
# Heat to temper by is laid up behind the zone, over this share of its length; enough for this
# colour, bronze to purple. Common practice. [-], [°C]
LAID_UP, RUN_BACK_C = (0.0, 0.5, 1.0, 2.0), 275.0
# By how much a hardening heat or a temper is misread where its cost is asked for. [°C]
MISREAD_C = 25.0
# A tenth of the depth that is missing counts as much as so much hardness at the skin. [HRC]
SHALLOW_HRC = 2.0
# What one heat in twenty strays by, in standard deviations.
BAD_CASE = 1.64


def bath_of(work: Treatment, shop: Workshop, mass_kg: float) -> Quench | None:
    """Return the quench of a treatment in the workshop's bath or a firm's, if there is one."""
    if work.medium is None:
        return None
    sent_out, sprayed = work.route.place == "subcontract", work.route.kind in SPRAYED
    return quench(work.medium, shop, mass_kg, sent_out=sent_out, sprayed=sprayed)


@lru_cache(maxsize=4096)
def alike(work: Treatment) -> Treatment:
    """Return the treatment that comes out of the quench as this one does."""
    # Bars of one steel that the heat meets in one structure harden alike, whatever their supply
    # condition and whoever keeps them.
    carbon = work.steel.composition_wt_pct.get("C")
    content = carbon.middle if carbon else 0.0
    met = structure_of(work.condition.name, content)
    first = next(c for c in work.steel.condition if structure_of(c.name, content) == met)
    return replace(work, condition=first, stock=None)


@per_part
def at_torch(job: Job, work: Treatment) -> "AtTorch":
    """Return a treatment at its torch or fire, with the set-up that serves."""
    bath = bath_of(work, job.asked.workshop, job.mass_kg)
    if work.source is None or bath is None or bath.bath is None:
        msg = f"{work.label} has no torch, or no bath whose boiling is described"
        raise ValueError(msg)
    sections = job.asked.part.section
    # Compound is put where the case is to be, and no more than that is made red.
    whole = work.route.extent == "whole" and work.route.process != "case"
    hard = tuple(range(len(sections))) if whole else job.hard
    lead = max((i for i in job.leading.sections if i in hard), key=lambda i: sections[i].size)
    task = _task(job, hard, lead, work.source, start(work.steel).steel_class)
    return AtTorch(work, job.asked, task, bath, hard, lead, job.leading, job.shared())


@per_part
def _task(
    job: Job, hard: tuple[int, ...], lead: int, source: HeatSource, steel_class: SteelClass
) -> Torching:
    """Return a part at a torch or fire, for all steels of a class."""
    return torching(job.asked, hard, lead, source, steel_class)


@dataclass(frozen=True, eq=False)
class AtTorch:
    """A treatment at its torch or fire, at the middle of all uncertainties.

    `hard` are the sections it heats, `lead` the thickest of the leading zone.
    """

    work: Treatment
    asked: Requirement
    task: Torching
    quench: Quench
    hard: tuple[int, ...]
    lead: int
    demand: Demand
    normals: Normals

    @cached_property
    def past_mm(self) -> float:
        """How far past the zone the flame goes, farther where heat is to run back."""
        least_mm, bath, span = least_past_mm(self.task), self.quench.bath, self._range
        if self.work.route.slug != RESIDUAL_HEAT or bath is None or span is None:
            return least_mm
        long_mm = self.task.part.zone_mm[1] - self.task.part.zone_mm[0]
        reaches = [max(least_mm, share * long_mm) for share in LAID_UP]
        for mm in reaches:
            dip = dip_for(self.task, mm, (0.5 * sum(span), USUAL_HOLD_S), bath)
            if dip is not None and dip.colour_after_s(RUN_BACK_C) is not None:
                return mm
        return least_mm

    @cached_property
    def library(self) -> Library:
        """The part's heatings and their quenches in the bath, at all cells."""
        whole = library(self.task, self.past_mm, self.quench)
        if self.work.route.slug != RESIDUAL_HEAT:
            return whole
        return dipped(whole, water_line_mm(self.task, self.past_mm))

    @cached_property
    def set_up(self) -> SetUp:
        """The first that comes near the best: the shortest hold, then the middle heat."""
        return self._tried[self._place]

    @cached_property
    def error(self) -> ReadingError:
        """How far its heat is misread."""
        return reading_error(self.work, self.asked.workshop)

    @property
    def lead_probe(self) -> int:
        """Place of the leading section among the hard ones of the stretch."""
        count = len(self.asked.part.section)
        lead = count - 1 - self.lead if self.task.part.turned_round else self.lead
        return self._places.hard.index(lead)

    @property
    def misread_hrc(self) -> float:
        """How much a heat misread by `MISREAD_C` costs the softest place of the zone. [HRC]."""
        softest = self._softest[1][self._place]
        return float(np.max(np.abs(softest - softest[1])))

    @cached_property
    def _place(self) -> int:
        """Which of the set-ups that are tried is chosen."""
        worths = self._softest[0]
        return int(np.argmax(worths >= worths.max() - WORTH_HRC))

    @property
    def dip(self) -> Dip | None:
        """The dip after which the heat behind the end runs back, if there is one."""
        if self.quench.bath is None:
            return None
        chosen = self.set_up
        heat = (chosen.heat_c, chosen.hold_s)
        return dip_for(self.task, self.past_mm, heat, self.quench.bath)

    @cached_property
    def _places(self) -> Probes:
        """Where the part is looked at while its set-up is chosen."""
        return probes(self.task.part, POSITIONS)

    @property
    def _even_s(self) -> float:
        """How long a part takes to be of one heat to the middle, by its thickness. [s]."""
        carbon = self.work.steel.composition_wt_pct.get("C")
        met = structure_of(self.work.condition.name, carbon.middle if carbon else 0.0)
        each_s = RICH_S_PER_MM if met == "spheroidised" else EVEN_S_PER_MM
        return each_s * heated_thickness(self.asked, self.work)

    @property
    def _range(self) -> tuple[float, float] | None:
        """The hardening range of the steel for its bath. [°C]."""
        return self.work.heats_c

    @cached_property
    def _tried(self) -> list[SetUp]:
        """The set-ups to choose from, the gentlest first."""
        source, span = self.work.source, self._range
        soak_s = 60.0 * source.soak_max_min.value if source else HOLDS_S[-1]
        most_s = min(self._even_s + ONCE_EVEN_S, HOLDS_S[-1], soak_s)
        # Of a part heated at one end alone, each second more spreads the heat behind it.
        whole = self.work.route.extent == "whole"
        least_s = min(self._even_s, most_s) if whole else 0.0
        holds = [*(hold for hold in HOLDS_S if least_s <= hold < most_s), most_s]
        heats = [850.0] if span is None else [0.5 * sum(span), span[1], span[0]]
        return [
            SetUp(STEP_C * round(heat / STEP_C), hold, self.past_mm)
            for hold in holds
            for heat in heats
        ]

    @cached_property
    def _softest(self) -> tuple[Floats, Floats]:
        """How good each set-up is, and its softest place where it is misread. [HRC]."""
        tried = self._tried
        off_c = BAD_CASE * float(np.hypot(self.error.bias_c, self.error.scatter_c))
        # Each has to bear a heat stopped early, overshot, or cold and short, in one of twenty.
        both = np.sqrt(0.5)
        short = (-both * off_c, -both * BAD_CASE * HOLD_LOG_SD)
        strays = [(0.0, 0.0), (-off_c, 0.0), (off_c, 0.0), short]
        shift_c = self.error.shift_c
        stop_c = [way.heat_c + shift_c + off for way in tried for off, _ in strays]
        hold_s = [way.hold_s * np.exp(log) for way in tried for _, log in strays]
        count = len(stop_c)
        # What a misread heat of each costs is worked out along with them.
        misread = (-MISREAD_C, 0.0, MISREAD_C)
        stop_c += [way.heat_c + off for way in tried for off in misread]
        hold_s += [way.hold_s for way in tried for _ in misread]
        hrc = self._zone_hrc(np.array(stop_c), np.array(hold_s))
        softest = hrc[:, self._places.rims].min(axis=1)
        missing = 1.0 - self._depth_share(hrc[:count])
        worth = softest[:count] - SHALLOW_HRC * 10.0 * missing
        each = worth.reshape(len(tried), len(strays))
        worths = np.asarray(0.5 * (each[:, 0] + each.min(axis=1)))
        return worths, softest[count:].reshape(len(tried), len(misread))

    def _zone_hrc(self, stop_c: Floats, hold_s: Floats) -> Floats:
        """Return the zone as quenched from some heats; shape (heats, probes). [HRC]."""
        meant = hardening_heat(self.work, self.asked.workshop, self.normals)
        if meant is None:
            msg = f"{self.work.label} is not quenched"
            raise ValueError(msg)
        # What the place itself goes through takes the place of the rest of the meant heat.
        met = (meant.target_c, meant.structure, meant.medium_class, meant.cold_c)
        where = self.task, self.past_mm, self.quench
        heats = tuple(stop_c.tolist()), tuple(hold_s.tolist())
        return zone_hrc(self.work.steel, met, where, self._places, heats)

    def _depth_share(self, hrc: Floats) -> Floats:
        """Return how much of the depth that is asked for the leading section has. [-]."""
        asked_mm, places = self.demand.depth_mm, self._places.places
        if asked_mm <= 0.0:
            return np.ones(len(hrc))
        count, lead = len(places), self.lead_probe
        section = hrc[:, lead * count : (lead + 1) * count]
        radius_mm = 0.5 * self.asked.part.section[self.lead].size
        limit = Limit.of(self.work.steel, self.demand.floor_hrc)
        inwards_mm = radius_mm * (1.0 - np.array(places))
        depth = hard_depth_mm(section, section, inwards_mm, limit)
        return np.asarray(np.minimum(depth / asked_mm, 1.0))
