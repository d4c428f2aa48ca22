"""What is done to a bar, as one says it at the bench: "heat the end, quench in oil"."""

from collections.abc import Callable

from catalog.steel import Steel
from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.decision.output import temper_out
from selector.job.candidates import WIPED
from selector.job.treatment import Treatment
from selector.wording import (
    condition_words,
    in_bath,
    in_sentence,
    means_words,
    quenched_words,
    shown,
)

# Where steel is bought by its AISI number.
AMERICAN = frozenset({"USD", "US$", "$", "CAD"})
# Tempers are read and set to this step. [°C]
STEP_C = 5


def bought_as(advice: Advice, steel: Steel) -> str:
    """Return what a steel is bought by where the user pays: "4140 (42CrMo4)" in dollars."""
    currency = advice.asked.limit.currency or advice.job.catalog.prices.currency
    names = steel.designations.aisi
    if currency.upper() not in AMERICAN or not names or steel.name in names:
        return steel.spoken
    return f"{names[0]} ({steel.name})"


def bar_words(advice: Advice, option: Option) -> str:
    """Return the bar of an option: what it is bought by, its condition, whether it is there."""
    work, name = option.treatment, bought_as(advice, option.treatment.steel)
    condition = work.condition.name
    if _unstated(advice, work):
        # Heat wipes out what nobody knows; what is left as it is was taken to be so.
        wiped = work.route.process in WIPED and work.route.extent == "whole"
        taken = "" if wiped else f", taken as {condition_words(condition)}"
        return f"{name} from the rack{taken}"
    rack = " from the rack" if work.stock is not None else ""
    if condition == "prehard":
        return f"pre-hardened {name}{rack}"
    if condition == "hard-element":
        return f"{name}{rack}"
    return f"{name}, {condition_words(condition)}{',' * bool(rack)}{rack}"


def _unstated(advice: Advice, work: Treatment) -> bool:
    """Return whether a bar lies in the rack whose condition nobody states."""
    held = (racked for racked in advice.job.bench.stock if racked.bar == work.stock)
    return any(len(racked.conditions) > 1 for racked in held)


def way_words(work: Treatment) -> str:
    """Return what is done to a bar by the name of its route, with its bath."""
    bath = work.medium.slug if work.medium else None
    return in_bath(in_sentence(work.route.name), bath)


def surface_words(option: Option) -> str:
    """Return how hard the surface comes out, in whole numbers: the middle of its figure."""
    return shown(option.judged.prediction.figures()["surface"].value)


def doing_words(advice: Advice, option: Option) -> str:
    """Return what is done to the bar of an option, temper included."""
    work = option.treatment
    say = _BY_KIND.get(work.route.kind)
    text = say(advice, option) if say else in_sentence(work.route.name)
    if work.route.place == "subcontract":
        text = in_sentence(work.route.name)
    return text + _temper(option)


def _temper(option: Option) -> str:
    """Return the temper that follows; of residual heat it is said with the quench."""
    temper = option.choice.temper
    if temper.means in {"none", "residual"}:
        return ""
    heat_c = STEP_C * round(temper.temperature_c / STEP_C)
    if temper.means == "salt":
        return f" at {heat_c:.0f} °C"
    again = {1: "", 2: ", twice", 3: ", three times"}.get(
        temper.cycles, f", {temper.cycles} times"
    )
    if option.treatment.route.place == "subcontract":
        return f", tempered at {heat_c:.0f} °C{again}"
    return f", temper at {heat_c:.0f} °C {means_words(temper.means)}{again}"


def _quench(work: Treatment) -> str:
    """Return how it is quenched, nothing where it is not."""
    return f", {quenched_words(work.medium.slug)}" if work.medium is not None else ""


def _where(work: Treatment) -> str:
    """Return by what it is heated."""
    source = work.source
    if source is None:
        return ""
    if source.kind == "flame":
        return " by torch"
    named = {"kiln": "kiln", "induction": "coil"}.get(source.slug)
    return f" in the {named or ('forge' if source.kind == 'fire' else 'furnace')}"


def _local(advice: Advice, option: Option) -> str:
    """Return a zone hardened by itself."""
    work, zone = option.treatment, advice.leading_zone
    place = zone.name or "end"
    return f"heat the {place} alone{_where(work)}{_quench(work)}"


def _residual(advice: Advice, option: Option) -> str:
    """Return an end that is tempered by the heat left behind it."""
    del advice
    shown = temper_out(option.choice)
    shade = shown.colour or f"{shown.temperature_c:.0f} °C"
    return (
        f"{quenched_words(_slug(option), 'the end')}, let the colour run down, "
        f"quench out at {shade}"
    )


def _slug(option: Option) -> str:
    """Return the bath of an option."""
    medium = option.treatment.medium
    return medium.slug if medium is not None else "air"


def _whole(advice: Advice, option: Option) -> str:
    """Return a part hardened all over."""
    del advice
    work = option.treatment
    if work.route.process in {"austemper", "marquench"}:
        return f"{work.route.process}{_where(work).replace(' in ', ' from ')}{_quench(work)}"
    cold = "" if work.route.cold_c is None else f", cool on to {work.route.cold_c.value:.0f} °C"
    return f"heat all over{_where(work)}{_quench(work)}{cold}"


def _pack(advice: Advice, option: Option) -> str:
    """Return a case from a pack."""
    del advice
    return f"pack-carburise{_where(option.treatment)}{_quench(option.treatment)}"


def _compound(advice: Advice, option: Option) -> str:
    """Return a thin case by compound."""
    del advice
    return f"case-harden with compound{_where(option.treatment)}{_quench(option.treatment)}"


def _plain(words: str) -> Callable[[Advice, Option], str]:
    """Return a way of saying that needs no figure."""

    def say(advice: Advice, option: Option) -> str:
        del advice, option
        return words

    return say


_BY_KIND: dict[str, Callable[[Advice, Option], str]] = {
    "as-bought": _plain("leave it as bought"),
    "prehard": _plain("use it as it comes"),
    "buy-hard-element": _plain("buy it ready hard"),
    "local-torch": _local,
    "residual-heat": _residual,
    "through-torch": _whole,
    "through-furnace": _whole,
    "carburise": _pack,
    "case": _compound,
    "age": _plain("age it in the furnace"),
    "anneal": _plain("anneal it in the furnace"),
}
