"""A treatment: one steel in one condition by one route in one medium; and one temper."""

from dataclasses import dataclass
from typing import Literal

from catalog.heat_source import HeatSource
from catalog.medium import Medium
from catalog.route import Route
from catalog.steel import Condition, Steel
from selector.heat.torch import TorchName
from selector.requirement.workshop import Stock

Means = Literal[
    "none", "oven", "furnace", "plate", "torch", "blaze", "sand", "residual", "salt"
]  # fmt: skip
FLAMES = frozenset({"flame", "fire"})
# Carbon beyond this stays carbide in the usual heat of a rich steel. Estimate. [wt %]
DISSOLVES_WT_PCT = 0.8
# Processes that end in a layer on steel of another hardness; of these what leaves the steel as
# it was bought and comes last of all, on a part that is finished.
LAYERS = frozenset({"case", "nitride", "chrome"})
LAID_ON = frozenset({"nitride", "chrome"})


@dataclass(frozen=True, slots=True)
class Temper:
    """One temper: by what means, how hot, how long, how often.

    "salt" is no temper after a quench but the hot bath in which a part turns to bainite.
    """

    means: Means
    temperature_c: float = 20.0
    time_s: float = 0.0
    cycles: int = 1

    @property
    def label(self) -> str:
        """The temper's part of an option id, for instance "oven-200c-60min"."""
        if self.means == "none":
            return "none"
        times = f"{self.cycles}x" if self.cycles > 1 else ""
        return f"{self.means}-{self.temperature_c:.0f}c-{times}{self.time_s / 60:g}min"


NO_TEMPER = Temper("none")


@dataclass(frozen=True, slots=True)
class Treatment:
    """What is done to one steel before the temper is chosen."""

    steel: Steel
    condition: Condition
    route: Route
    medium: Medium | None = None
    source: HeatSource | None = None
    stock: Stock | None = None

    def __hash__(self) -> int:
        """Return the hash of its names: equal treatments have equal ones, and it is quick."""
        medium = None if self.medium is None else self.medium.slug
        source = None if self.source is None else self.source.slug
        return hash(
            (
                self.steel.slug,
                self.condition.name,
                self.route.slug,
                medium,
                source,
                self.stock is None,
            )
        )

    @property
    def label(self) -> str:
        """The id of all options of this treatment without their temper."""
        quench = f".{self.medium.slug}" if self.medium else ""
        return f"{self.steel.slug}/{self.condition.name}/{self.route.slug}{quench}"

    @property
    def group(self) -> tuple[str, str]:
        """Family and way: what takes one place in the short list."""
        return (self.steel.family, self._way)

    @property
    def _way(self) -> str:
        """The route, or the plainest of those that come to much the same."""
        route = self.route
        # The heat left behind an end is one way to temper what a flame hardens there.
        if route.kind in {"local-torch", "residual-heat"}:
            return "local-torch"
        # A firm chooses its own furnace, coil or burner; a cold step is one more of the same.
        if route.place == "subcontract" and self.hardens:
            skin = "surface hardened by a firm"
            whole = "austempered" if route.process == "austemper" else "sent out to harden"
            return whole if route.extent == "whole" else skin
        return route.slug.removesuffix("-cold") if route.cold_c is not None else route.slug

    @property
    def hardens(self) -> bool:
        """Whether the route heats and quenches the steel itself."""
        return self.route.process in {"quench", "marquench", "austemper"}

    @property
    def heats_c(self) -> tuple[float, float] | None:
        """The hardening range of the steel for this bath, None of a steel that has none. [°C].

        The lower end is for water, the upper for oil on steel made for water (EN 10083 and its
        forerunners, from memory), where carbide is left over: dissolved, it cracks in water.
        Leaner steel by eye rather comes to heat.
        """
        if self.steel.hardened is None:
            return None
        span, kind = self.steel.hardened.temperature_c, self.steel.hardened.quench
        bath = self.medium.severity_class if self.medium else kind
        carbon = self.steel.composition_wt_pct.get("C")
        if carbon is None or carbon.middle < DISSOLVES_WT_PCT:
            return span.low, span.high
        if bath == "water":
            return span.low, span.middle
        return (span.middle, span.high) if kind == "water" else (span.low, span.high)

    @property
    def by_eye(self) -> bool:
        """Whether the hardening heat is judged by the operator's eye."""
        return self.source is not None and self.source.control == "eye"


# Flames and fires of the catalogue whose heat is computed, and as which torch.
TORCH_OF: dict[str, TorchName] = {
    "hand-torch": "hand-propane",
    "propylene-torch": "hand-propane",
    "oxy-propane": "oxy-propane",
    "oxy-acetylene": "oxy-acetylene",
    "forge": "forge",
    "charcoal-forge": "forge",
}


# Media whose boiling nobody has described: they keep to the bar charts, by their severity.
CHARTED = frozenset({"plates", "hot-salt", "hot-oil"})


def knows(source: HeatSource | None) -> bool:
    """Return whether a heat source is a flame or fire that can be computed."""
    return source is not None and source.slug in TORCH_OF


def is_torched(treatment: Treatment) -> bool:
    """Return whether a treatment is followed from a known flame or fire into its bath."""
    medium = treatment.medium
    return (
        treatment.hardens
        and knows(treatment.source)
        and medium is not None
        and medium.kind not in CHARTED
    )


def is_cased_by_torch(treatment: Treatment) -> bool:
    """Return whether a known flame or fire brings a part to the heat of its case."""
    medium, own = treatment.medium, treatment.route.place == "workshop"
    boils = medium is not None and medium.kind not in CHARTED
    return own and treatment.route.process == "case" and knows(treatment.source) and boils
