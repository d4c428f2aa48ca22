"""All that stays the same while options are weighed: part, demands, bench, prices, draws."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from selector import draws
from selector.bench import Bench, bench
from selector.duty import Demand, demands, leading
from selector.geometry import Notches, mass_kg, notches
from selector.requirement import Requirement
from selector.screening import hard_sections

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Surroundings:
    """The fixed side of every prediction."""

    asked: Requirement
    catalog: Catalog
    bench: Bench
    demands: tuple[Demand, ...]
    notches: Notches
    mass_kg: float
    hard: tuple[int, ...]
    ceilings: Mapping[str, float] = field(default_factory=dict)
    count: int = draws.COUNT

    @property
    def leading(self) -> Demand:
        """The demand that sets the treatment."""
        return leading(self.demands)

    def shared(self) -> draws.Normals:
        """Return the draws all steels share; all zero when only the middle is asked for."""
        if self.count == 1:
            return dict.fromkeys(draws.SHARED, np.zeros(1))
        return draws.shared(self.count)

    def of_steel(self, slug: str) -> dict[str, Floats]:
        """Return one steel's draws together with the shared ones."""
        if self.count == 1:
            return dict.fromkeys((*draws.SHARED, *draws.STEEL), np.zeros(1))
        return {**draws.shared(self.count), **draws.of_steel(slug, self.count)}


def surroundings(
    asked: Requirement, catalog: Catalog, count: int = draws.COUNT
) -> Surroundings:
    """Return the fixed side of an advice.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    count : int
        Number of draws; 1 gives the middle alone.

    Returns
    -------
    Surroundings
        Shared by all predictions.
    """
    return Surroundings(
        asked=asked,
        catalog=catalog,
        bench=bench(asked, catalog),
        demands=demands(asked),
        notches=notches(asked.part),
        mass_kg=mass_kg(asked.part),
        hard=hard_sections(asked),
        count=count,
    )
