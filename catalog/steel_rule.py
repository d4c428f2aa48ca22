"""What a steel's values must keep among themselves, and its names among all steels."""

from collections import defaultdict
from collections.abc import Callable, Iterator
from itertools import pairwise

from catalog.fault import fault_line
from catalog.load import Catalog
from catalog.steel import Quench, Steel, plain

# A curve may rise this much by the scatter of its readings alone. [HRC]
CURVE_RISE_HRC = 1.0
# Shares of a whole make it up to this. [-]
WHOLE_WITHIN = 0.011
SEVEREST_FIRST: tuple[Quench, ...] = ("water", "oil", "air")


def _of(steel: Steel, key: str, rule: str, got: str) -> str:
    """Return a fault of a steel's file, in one line."""
    return fault_line(f"{steel.slug}.toml", key, rule, got)


def _name_is_unique(catalog: Catalog) -> Iterator[str]:
    """Each designation means one steel, unless it is a trade name of each that carries it."""
    carriers: dict[str, set[str]] = defaultdict(set)
    for steel in catalog.steels.values():
        for name in (steel.slug, *steel.names()):
            carriers[plain(name)].add(steel.slug)
    for key, slugs in carriers.items():
        loose = [slug for slug in slugs if not _is_trade_name(key, catalog.steels[slug])]
        for slug in sorted(loose) if len(slugs) > 1 else ():
            rule = "name must belong to one steel, or be a trade name of each"
            others = ", ".join(sorted(slugs - {slug}))
            yield _of(catalog.steels[slug], "designations", rule, f"{key} also in {others}")


def _is_trade_name(key: str, steel: Steel) -> bool:
    """Return whether `steel` carries the name in the trade only."""
    return key in {plain(name) for name in steel.designations.trade}


def _transformations_in_order(catalog: Catalog) -> Iterator[str]:
    """Ms lies below Ac1, Ac1 below Ac3, and normalising above Ac3."""
    for steel in catalog.steels.values():
        known = steel.temperature_c
        for lower, upper in (("ms", "ac1"), ("ac1", "ac3"), ("ac3", "normalise")):
            if lower in known and upper in known and known[lower].middle >= known[upper].middle:
                yield _of(
                    steel,
                    f"temperature_c.{lower}",
                    f"must be below {upper}",
                    f"{known[lower].middle:g} over {known[upper].middle:g} °C",
                )


def _hardening_heat_is_hot(catalog: Catalog) -> Iterator[str]:
    """Steel hardens from above Ac1; as bought, where Ac3 is known, from above Ac3.

    A case-hardening steel is quenched for its case, whose carbon lowers Ac3: Ac1 is the floor.
    """
    for steel in catalog.steels.values():
        if steel.hardened is None:
            continue
        heat = steel.hardened.temperature_c.low
        for name in ("ac1", "ac3") if "quench" in steel.hardens_by else ("ac1",):
            floor = steel.temperature_c.get(name)
            if floor is not None and heat <= floor.middle:
                yield _of(
                    steel,
                    "hardened.temperature_c.min",
                    f"must be above {name}, {floor.middle:g} °C",
                    f"{heat:g} °C",
                )


def _curve_falls(catalog: Catalog) -> Iterator[str]:
    """Tempering softens, except where alloy carbides harden again."""
    for steel in catalog.steels.values():
        if steel.tempered is None or _hardens_again(steel):
            continue
        softest = 70.0
        for at, hardness in steel.tempered.curve_hrc.points:
            if hardness > softest + CURVE_RISE_HRC:
                yield _of(
                    steel,
                    "tempered.curve_hrc.points",
                    "must not rise by more than 1 HRC without secondary hardening",
                    f"{hardness:g} HRC at {at:g} °C after {softest:g}",
                )
            softest = min(softest, hardness)


def _hardens_again(steel: Steel) -> bool:
    """Return whether a steel holds enough carbide formers to harden on tempering."""
    held = {name: span.middle for name, span in steel.composition_wt_pct.items()}
    strong = held.get("Mo", 0.0) + held.get("W", 0.0) / 2 + held.get("V", 0.0)
    return held.get("Cr", 0.0) >= 3.0 or strong >= 1.0


def _curve_below_as_quenched(catalog: Catalog) -> Iterator[str]:
    """No tempered hardness passes the hardness as quenched, except by secondary hardening."""
    for steel in catalog.steels.values():
        fresh = steel.hardened.as_quenched_hrc if steel.hardened else None
        if steel.tempered is None or fresh is None or _hardens_again(steel):
            continue
        hardest = max(hardness for _, hardness in steel.tempered.curve_hrc.points)
        if hardest > fresh.high + CURVE_RISE_HRC:
            yield _of(
                steel,
                "tempered.curve_hrc.points",
                f"must not pass {fresh.high:g} HRC as quenched",
                f"{hardest:g} HRC",
            )


def _section_limits_in_order(catalog: Catalog) -> Iterator[str]:
    """Water hardens through at least as thick a bar as oil does, and oil as air."""
    for steel in catalog.steels.values():
        limits = steel.hardened.section_limit_mm if steel.hardened else {}
        given = [quench for quench in SEVEREST_FIRST if quench in limits]
        for severe, mild in pairwise(given):
            if limits[severe].value < limits[mild].value:
                yield _of(
                    steel,
                    f"hardened.section_limit_mm.{severe}",
                    f"must be at least that of {mild}",
                    f"{limits[severe].value:g} under {limits[mild].value:g} mm",
                )


def _condition_is_named_once(catalog: Catalog) -> Iterator[str]:
    """Each supply condition, part of an option's id, stands once in a steel."""
    for steel in catalog.steels.values():
        names = [condition.name for condition in steel.condition]
        for name in sorted({name for name in names if names.count(name) > 1}):
            rule = "must differ within a steel"
            yield _of(steel, "condition.name", rule, f"{name} twice")


def _likely_is_known(catalog: Catalog) -> Iterator[str]:
    """Bar of unknown make is likely a steel that is known, and the shares make up a whole."""
    for steel in catalog.steels.values():
        for guess in steel.likely:
            if guess.steel not in catalog.steels or catalog.steels[guess.steel].likely:
                yield _of(steel, "likely.steel", "must be a steel that is known", guess.steel)
        whole = sum(guess.share.value for guess in steel.likely)
        if steel.likely and abs(whole - 1.0) > WHOLE_WITHIN:
            yield _of(steel, "likely.share", "must make up 1 together", f"{whole:g}")


STEEL_RULES: tuple[Callable[[Catalog], Iterator[str]], ...] = (
    _name_is_unique,
    _transformations_in_order,
    _hardening_heat_is_hot,
    _curve_falls,
    _curve_below_as_quenched,
    _section_limits_in_order,
    _condition_is_named_once,
    _likely_is_known,
)
