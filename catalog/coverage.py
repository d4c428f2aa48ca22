"""What each steel lacks for its own proper routes, and what advice does without it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from catalog.load import FILES, Catalog
from catalog.quantity import sourced
from catalog.steel import Steel

# From here up carbides stay undissolved and a bar is not computed from its carbon alone. [wt %]
RICH_WT_PCT = 0.7


@dataclass(frozen=True, slots=True)
class Gap:
    """A value a steel lacks: the key in its file, and what advice does instead."""

    steel: str
    key: str
    instead: str


# Pre-hardened bar in a listed band no wider than this is known well enough for any size: a
# letter of BS 970 spans 54. [HB]
NARROW_HB = 70.0
# From so much chromium carbides are other than cementite. [wt %]
HARD_CARBIDE_WT_PCT = 3.0


def _quenches(steel: Steel) -> bool:
    """Return whether a steel is hardened by heat and quench."""
    return "quench" in steel.hardens_by


def _is_rich(steel: Steel) -> bool:
    """Return whether a steel is hardened by quench and has more carbon than dissolves."""
    carbon = steel.composition_wt_pct.get("C")
    tool = steel.kind.endswith("-tool") or steel.kind in {"high-speed", "martensitic-stainless"}
    return _quenches(steel) and (tool or (carbon is not None and carbon.middle > RICH_WT_PCT))


def _lacks(*path: str) -> Callable[[Steel], bool]:
    """Return a test whether a steel has nothing at a path of fields."""

    def empty(steel: Steel) -> bool:
        at: object = steel
        for name in path:
            at = at.get(name) if isinstance(at, dict) else getattr(at, name, None)
            if not at:
                return True
        return False

    return empty


def _bought_hard(steel: Steel) -> bool:
    """Return whether a steel has no soft condition: nothing is done to it but cutting."""
    return {c.name for c in steel.condition} <= {"hard-element"}


def _sold_in_a_wide_band(steel: Steel) -> bool:
    """Return whether pre-hardened bar of a steel is listed too widely to stand for a size."""
    # Parts sold to a class of their own, and bar that a maker holds to one band, are not.
    for condition in steel.condition:
        band = condition.hardness_hb
        if condition.name == "prehard" and band is not None and not condition.sold_for:
            return band.high - band.low > NARROW_HB
    return False


def _holds_hard_carbide(steel: Steel) -> bool:
    """Return whether a tool steel holds carbides harder than cementite."""
    chromium = steel.composition_wt_pct.get("Cr")
    return steel.kind in {"air-tool", "high-speed"} and (
        chromium is not None and chromium.middle >= HARD_CARBIDE_WT_PCT
    )


def _is_normalised(steel: Steel) -> bool:
    """Return whether a weld or a coarse bar of a steel is normalised: none hard in air is."""
    hardened = steel.hardened
    by_bath = hardened is not None and hardened.quench != "air"
    return by_bath and _quenches(steel) and not _is_rich(steel)


# What a steel's own routes want, of which steels, and what happens without it.
_WANTED: tuple[tuple[str, Callable[[Steel], bool], Callable[[Steel], bool], str], ...] = (
    ("composition_wt_pct", lambda steel: steel.kind != "unknown" and not _bought_hard(steel),
     _lacks("composition_wt_pct"), "nothing is computed: it is shown apart as unknown"),
    ("hardened.as_quenched_hrc", _is_rich, _lacks("hardened", "as_quenched_hrc"),
     "hardness as quenched is computed from its composition: less sure in carbide-rich steel"),
    ("hardened.section_limit_mm", _is_rich, _lacks("hardened", "section_limit_mm"),
     "how deep it hardens is computed from its composition, with a wider spread"),
    ("tempered", _is_rich, _lacks("tempered"),
     "the temper is computed from its composition by the tempering parameter"),
    ("hardened.soak_min", _is_rich, _lacks("hardened", "soak_min"),
     "it soaks a minute for each millimetre in a furnace"),
    ("temperature_c.anneal", _quenches, _lacks("temperature_c", "anneal"),
     "a hard part is softened at one temperature for all steels"),
    ("temperature_c.normalise", _is_normalised, _lacks("temperature_c", "normalise"),
     "normalising goes by the range of the route"),
    ("nitrided", lambda steel: "nitride" in steel.hardens_by, _lacks("nitrided"),
     "nitriding cannot be judged"),
    ("carbide_vol_pct", _holds_hard_carbide, _lacks("carbide_vol_pct"),
     "wear under grit counts its hardness alone"),
    ("strength_hb", _sold_in_a_wide_band, _lacks("strength_hb"),
     "pre-hardened bar has one hardness for every size and letter"),
    ("machinability_pct", lambda steel: steel.kind != "unknown" and not _bought_hard(steel),
     _lacks("machinability_pct"), "it is costed as if it cut at 55 %"),
)  # fmt: skip


def gaps(catalog: Catalog) -> Iterator[Gap]:
    """Yield every value that a steel lacks for what is properly done with it.

    Parameters
    ----------
    catalog : Catalog
        What is known.

    Yields
    ------
    Gap
        In the order of the steels. Critical temperatures are no gap: they are computed from
        the composition. What a steel does in frost is no matter of its routes: `untried_cold`.
    """
    for steel in catalog.steels.values():
        for key, wanted, lacks, instead in _WANTED:
            if wanted(steel) and lacks(steel):
                yield Gap(steel.slug, key, instead)
        if steel.slug not in catalog.prices.steel_per_kg and not _bought_hard(steel):
            price = f"it is costed at {catalog.prices.default_per_kg:g} a kg"
            yield Gap(steel.slug, f"prices.steel_per_kg.{steel.slug}", price)


def untried_cold(catalog: Catalog) -> tuple[list[str], int]:
    """Return the steels whose toughness in frost is unknown once hardened, and of how many.

    Parameters
    ----------
    catalog : Catalog
        What is known.

    Returns
    -------
    tuple of list of str and int
        Steels that are hardened and tempered for strength and have no transition; all such
        steels. [-]
    """
    tough = {"alloy", "medium-carbon", "nitriding"}
    asked = [s for s in catalog.steels.values() if s.kind in tough and not _bought_hard(s)]
    return [s.slug for s in asked if "transition" not in s.temperature_c], len(asked)


def read_share(catalog: Catalog) -> tuple[int, int, int]:
    """Return how many sourced values were read in print, wholly and in part, and of how many.

    Parameters
    ----------
    catalog : Catalog
        What is known.

    Returns
    -------
    tuple of int
        Of steels, routes, media, heat sources and cautions; the rest is from memory. [-]
    """
    groups = [getattr(catalog, kind) for kind in FILES]
    records = [r for group in (*groups, catalog.cautions) for r in group.values()]
    values = [value for record in records for _, value in sourced(record)]
    read, part = (sum(value.seen == how for value in values) for how in ("read", "part"))
    return read, part, len(values)


def wanted_count(catalog: Catalog) -> int:
    """Return how many values all steels together should have. [-]."""
    steels = catalog.steels.values()
    priced = sum(not _bought_hard(steel) for steel in steels)
    return priced + sum(wanted(steel) for steel in steels for _, wanted, _, _ in _WANTED)
