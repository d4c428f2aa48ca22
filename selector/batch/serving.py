"""What parts of a batch may share: the bars that serve each, its heats in furnace and oven."""

from selector.advice.advise import Advice
from selector.batch.record import HeatRunOut, ServingOut
from selector.decision.drawback import stands_back, unheard_of
from selector.decision.option import Option
from selector.job.screening import heated_thickness
from selector.job.soak import soak_min
from selector.job.treatment import Treatment

# A quarter more than the middle of 20 to 30 minutes for each 25 mm, for steel whose sheet gives
# no soak: ASM Handbook vol. 4 (from memory), as in the soak itself. [-]
LONGEST_SOAK = 1.2
SHARED_HEAT = frozenset({"furnace", "salt-bath"})
SHARED_TEMPER = frozenset({"furnace", "oven"})


def serving(advice: Advice) -> tuple[ServingOut, ...]:
    """Return the bars that serve a part, each with the best option made of it.

    Parameters
    ----------
    advice : Advice
        Of the part.

    Returns
    -------
    tuple of ServingOut
        The bar of the first option first, others by score; none for a part that is referred.
    """
    if advice.asked.safety_critical or not advice.options:
        return ()
    asked = advice.asked
    thick = max(section.size for section in asked.part.section)
    first = advice.options[0]
    judged = [(first.treatment, first.id, first.score)]
    judged += [
        (option.treatment, option.id, option.score)
        for option in advice.options[1:]
        if not (stands_back(option, asked) or unheard_of(option))
    ]
    judged += [(b.treatment, b.id, b.score) for b in advice.beaten if not b.stands_back]
    best: dict[tuple[str, str], ServingOut] = {}
    for work, name, score in judged:
        bar = (work.steel.slug, work.condition.name)
        if bar not in best or score > best[bar].score:
            best[bar] = ServingOut(
                steel_slug=bar[0], spoken=work.steel.spoken, condition=bar[1],
                id=name, score=score, size_mm=thick,
            )  # fmt: skip
    own = (first.treatment.steel.slug, first.treatment.condition.name)
    # What the part is best made of stands for it, whatever else of that bar scores higher.
    mine = best.pop(own).model_copy(update={"id": first.id, "score": first.score})
    rest = sorted(best.values(), key=lambda bar: (-bar.score, bar.steel_slug, bar.condition))
    return (mine, *rest)


def heats(advice: Advice) -> tuple[HeatRunOut, ...]:
    """Return the heats of the first option that other parts may share.

    Parameters
    ----------
    advice : Advice
        Of the part.

    Returns
    -------
    tuple of HeatRunOut
        In the order of the work; none for a part that is referred or sent out.
    """
    if advice.asked.safety_critical or not advice.options:
        return ()
    first = advice.options[0]
    if first.treatment.route.place == "subcontract":
        return ()
    runs = (_hardening(advice, first.treatment), _tempering(first))
    return tuple(run for run in runs if run is not None)


def _hardening(advice: Advice, work: Treatment) -> HeatRunOut | None:
    """Return the hardening heat of a part in a furnace or salt bath, if it has one."""
    hardened, source = work.steel.hardened, work.source
    shared = source is not None and source.kind in SHARED_HEAT
    if hardened is None or source is None or not (shared and work.hardens):
        return None
    span = hardened.temperature_c
    own = soak_min(work.steel, heated_thickness(advice.asked, work))
    published = hardened.soak_min
    most = LONGEST_SOAK * own if published is None else max(published.high, own)
    return HeatRunOut(
        kind="harden", by=source.slug, then=work.medium.slug if work.medium else "air",
        low_c=span.low, high_c=span.high, aim_c=span.middle, least_min=own, most_min=most,
    )  # fmt: skip


def _tempering(option: Option) -> HeatRunOut | None:
    """Return the temper of a part in an oven or furnace, if it has one."""
    temper = option.choice.temper
    if temper.means not in SHARED_TEMPER:
        return None
    aim = temper.temperature_c
    low, high = option.choice.band_c or (aim, aim)
    minutes = temper.time_s / 60.0
    times = {1: "once", 2: "twice"}.get(temper.cycles, f"{temper.cycles} times")
    return HeatRunOut(
        kind="temper", by=temper.means, then=times,
        low_c=low, high_c=high, aim_c=aim, least_min=minutes, most_min=minutes,
    )  # fmt: skip
