"""The one change that makes a flame hardening succeed, weighed like any other job."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from catalog.medium import Medium
from catalog.route import Route
from catalog.steel import Steel
from selector.decision.option import Option, scorer_of
from selector.decision.weighing import weigh
from selector.flame.condition import conditions
from selector.heat.boiling import Quench, bath_temperature_c
from selector.job.candidates import screened
from selector.job.job import Job, resolved
from selector.job.process import reading_error
from selector.job.treatment import Treatment, is_torched
from selector.option.reference_bar import reference_cost
from selector.option.set_up import bath_of
from selector.option.torched import meant_torched
from selector.requirement.workshop import Bath as KeptBath
from selector.requirement.workshop import Heat, TemperMeans, Workshop

# A watery bath that is warmer than usual by more than this is worth cooling. [K]
WARMER_K = 15.0
# Baths that a workshop can set up, mildest first.
BATHS = ("oil", "fast-oil", "polymer", "water", "brine")
BIGGER_TORCH = "oxy-propane"
SOFT = frozenset({"hard_enough", "depth", "heating"})
UNEVEN = "uneven"  # not a gate: a heat that differs from side to side


@dataclass(frozen=True, slots=True, eq=False)
class Change:
    """One change that leaves less in the way: what to do, what comes out, if at hand."""

    text: str
    job: Job
    option: Option
    at_hand: bool


@dataclass(frozen=True, slots=True)
class _Trial:
    """A change to try: if it is at hand, what it is good against, the workshop as changed."""

    text: str
    at_hand: bool
    against: frozenset[str]
    shop: Workshop


def first_change(job: Job, work: Treatment, option: Option | None) -> Change | None:
    """Return the first single change after which no gate fails and fewer conditions stand."""
    # Weighed anew; None where no single change serves.
    amiss, before = _amiss(job, option), _count(job, option)
    for trial in _trials(job.asked.workshop, work, job.catalog.media, job.mass_kg):
        if amiss and not trial.against & amiss:
            continue
        asked = job.asked.model_copy(update={"workshop": trial.shop})
        changed = resolved(asked, job.catalog)
        option_then = _weighed(changed, work)
        if option_then is not None and _count(changed, option_then) < before:
            return Change(trial.text, changed, option_then, trial.at_hand)
    return None


def _count(job: Job, option: Option | None) -> int:
    """Return how much stands in the way of an option; more than all where it is turned down."""
    return 99 if option is None or _is_refused(option) else len(
        conditions(job, option, every=True)
    )  # fmt: skip


def _is_refused(option: Option) -> bool:
    """Return whether an option fails a gate."""
    return option.judged.verdict in {"fail", "unknown"}


def _amiss(job: Job, option: Option | None) -> frozenset[str]:
    """Return what stands in the way; nothing where nothing was judged."""
    if option is None:
        return frozenset()
    bad: set[str] = {
        gate.name for gate in option.judged.gates if gate.verdict in {"fail", "marginal"}
    }
    if meant_torched(job, option.treatment).is_uneven:
        bad.add(UNEVEN)
    return frozenset(bad)


def _weighed(job: Job, work: Treatment) -> Option | None:
    """Return the best option of the same steel at a torch, None where it is turned down."""

    def wanted(steel: Steel, route: Route) -> bool:
        return (steel.slug, route.slug) == (work.steel.slug, work.route.slug)

    pool = [
        item
        for item in screened(job.asked, job.catalog, job.bench, wanted)
        if is_torched(item.treatment)
    ]
    scorer = scorer_of(job, reference_cost(job))
    return next(iter(weigh(job, pool, scorer).options), None)


def _trials(
    shop: Workshop, work: Treatment, media: Mapping[str, Medium], mass_kg: float
) -> Iterator[_Trial]:
    """Yield single changes, what is at hand first."""
    if not shop.turns_part:
        yield _Trial(
            "hold and turn the part in the flame",
            at_hand=True,
            against=frozenset({"movement", "heating", UNEVEN}),
            shop=shop.model_copy(update={"turns_part": True}),
        )
    yield from _own_bath(shop, work, bath_of(work, shop, mass_kg))
    yield from _reading(shop, work)
    yield from _flames(shop, work)
    yield from _baths(shop, work, media)
    if not any(given.means == "furnace" for given in shop.temper):
        furnace = TemperMeans(means="furnace")
        yield _Trial(
            "temper it in a furnace",
            at_hand=False,
            against=frozenset({"not_too_hard", "snap", "strength"}),
            shop=shop.model_copy(update={"temper": (*shop.temper, furnace)}),
        )


def _own_bath(shop: Workshop, work: Treatment, bath: Quench | None) -> Iterator[_Trial]:
    """Yield what can be done about the bath that is there."""
    medium = work.medium
    kept = next((b for b in shop.bath if medium and b.medium == medium.slug), None)
    if medium is None or medium.kind == "air" or kept is None or bath is None:
        return
    name = medium.name.lower()

    def with_bath(**update: object) -> Workshop:
        mended = kept.model_copy(update=update)
        others = tuple(mended if b is kept else b for b in shop.bath)
        return shop.model_copy(update={"bath": others})

    if kept.volume is not None:
        yield _Trial(
            f"quench in more {name}, in a deep vessel",
            at_hand=False,
            against=frozenset({"medium"}),
            shop=with_bath(volume=None),
        )
    if bath.bath is None:
        return
    warm_c = bath_temperature_c(bath.bath)
    usual_c = bath_temperature_c(replace(bath.bath, temperature_c=None))
    if medium.severity_class == "water" and warm_c > usual_c + WARMER_K:
        yield _Trial(
            f"let the bath cool to {usual_c:.0f} °C",
            at_hand=True,
            against=SOFT,
            shop=with_bath(temperature=usual_c),
        )
    if kept.agitation in {"none", "mild"}:
        yield _Trial(
            f"move the part well in the {name}",
            at_hand=True,
            against=SOFT,
            shop=with_bath(agitation="moderate"),
        )


def _reading(shop: Workshop, work: Treatment) -> Iterator[_Trial]:
    """Yield a better reading of the heat: out of bright light, then by a crayon."""
    any_heat = frozenset({*SOFT, "not_too_hard", "movement", "snap"})
    now = reading_error(work, shop)
    dim = shop.model_copy(update={"light": "dim"})
    if reading_error(work, dim).bias_c < now.bias_c or now.shift_c > 0.0:
        yield _Trial("judge the heat in dim light", at_hand=True, against=any_heat, shop=dim)
    crayon = shop.model_copy(update={"measure": (*shop.measure, "crayon")})
    if reading_error(work, crayon).bias_c < now.bias_c:
        text = "read the heat by a temperature crayon"
        yield _Trial(text, at_hand=False, against=any_heat, shop=crayon)


def _flames(shop: Workshop, work: Treatment) -> Iterator[_Trial]:
    """Yield other flames."""
    source = work.source
    if source is None:
        return
    others = tuple(heat for heat in shop.heat if heat.source != source.slug)
    said = next((heat.gas_flow for heat in shop.heat if heat.source == source.slug), None)
    usual = source.gas_per_h_kg.value if source.gas_per_h_kg else None
    kg_per_h = said if said is not None else usual
    for times, text, at_hand in (
        (0.5, "take a tip for half the gas", True),
        (2.0, "take a tip for twice the gas", False),
    ):
        if kg_per_h is not None:
            heat = (Heat(source=source.slug, gas_flow=times * kg_per_h), *others)
            changed = shop.model_copy(update={"heat": heat})
            yield _Trial(text, at_hand, frozenset({"heating", *SOFT}), changed)
    if source.slug not in {BIGGER_TORCH, "oxy-acetylene"}:
        changed = shop.model_copy(update={"heat": (Heat(source=BIGGER_TORCH), *others)})
        yield _Trial("take an oxy-propane heating torch", False, SOFT, changed)


def _baths(shop: Workshop, work: Treatment, known: Mapping[str, Medium]) -> Iterator[_Trial]:
    """Yield other baths, the steel's own first: harsher against softness, milder for cracks."""
    kept = {bath.medium for bath in shop.bath}
    hardened = work.steel.hardened
    own = hardened.quench if hardened else ""
    for slug in sorted(BATHS, key=lambda s: s not in known or known[s].severity_class != own):
        if slug in kept or slug not in known or slug not in work.route.media:
            continue
        yield _Trial(
            f"quench in {known[slug].name.lower()}",
            at_hand=False,
            against=frozenset({*SOFT, "cracking", "movement", "medium", "equipment"}),
            shop=shop.model_copy(update={"bath": (*shop.bath, KeptBath(medium=slug))}),
        )
