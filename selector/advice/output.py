"""The advice turned into plain data: what `--json` prints and the page shows."""

from collections.abc import Iterable
from typing import Any

import numpy as np

from selector.advice.advise import PAIRED, Advice, expected_merits
from selector.advice.alternative import alternatives, barred
from selector.advice.assumption import assumptions
from selector.advice.caution import cautions_shown
from selector.advice.change import changes, nearest_first
from selector.advice.firm import firm
from selector.advice.headline import headline
from selector.advice.order import reasons, why_before
from selector.advice.rack import rack
from selector.advice.record import (
    AdviceOut,
    ComparisonOut,
    MethodOut,
    RangeOut,
    RejectedOut,
    ShareOut,
)
from selector.advice.remark import remarks
from selector.advice.would_change import would_change
from selector.decision.comparison import Comparison
from selector.decision.option import Option, Rejected
from selector.decision.output import option_out, rounded_share
from selector.decision.second_opinion import second_opinion
from selector.job.zone_out import zone_out
from selector.record import OptionOut
from selector.requirement.priority import CRITERIA
from selector.trial.unknown_bar import trial_steps

SCHEMA_VERSION = 2
# What to find out where a gate is unknown.
FIND_OUT = {
    "response": "the grade: ask for the certificate, or harden a coupon of the same bar",
    "snap": "its toughness: break a coupon treated the same way",
    "model": "how it comes out: treat a coupon of the same shape and size",
}


def _option(advice: Advice, option: Option, place: int) -> OptionOut:
    """Return one option of the advice as plain data."""
    return option_out(advice.job, option, place, advice.ranges, reasons(advice, option))


def _every(items: Iterable[Rejected], budget: float | None) -> tuple[RejectedOut, ...]:
    """Return rejected treatments as plain data, those of a steel that fare alike as one."""
    # Most are stopped by a rule before anything is worked out, each way of a steel by the same.
    alike: dict[tuple[object, ...], list[Rejected]] = {}
    for item in items:
        work, gate = item.treatment, item.gate
        figures = (item.share, item.within_budget, item.cost, item.nearness(budget))
        key = (id(work.steel), work.stock is None, gate.name, gate.verdict, gate.text, figures)
        alike.setdefault(key, []).append(item)
    return tuple(_rejected(first, rest, budget) for first, *rest in alike.values())


def _rejected(item: Rejected, rest: Iterable[Rejected], budget: float | None) -> RejectedOut:
    """Return a rejected treatment as plain data, with the other ways of its steel like it."""
    work = item.treatment
    return RejectedOut(
        steel=work.steel.name,
        steel_slug=work.steel.slug,
        spoken=work.steel.spoken,
        family=work.steel.family,
        condition=work.condition.name,
        route=work.route.slug,
        route_name=work.route.name,
        route_kind=work.route.kind,
        medium=work.medium.slug if work.medium else None,
        gate=item.gate.name,
        verdict=item.gate.verdict,
        text=item.gate.text,
        share=round(item.share, 4),
        within_budget=rounded_share(item.within_budget),
        cost=None if item.cost is None else round(item.cost, 2),
        nearness=round(item.nearness(budget), 4),
        racked=work.stock is not None,
        find_out=FIND_OUT.get(item.gate.name) if item.gate.verdict == "unknown" else None,
        also=tuple(other.treatment.label.partition("/")[2] for other in rest),
    )


def _methods(advice: Advice, orders: tuple[Comparison, ...]) -> tuple[MethodOut, ...]:
    """Return the orders of other methods as option ids."""
    methods = []
    for comparison in orders:
        places = comparison.places
        # Options that share a place stand in the order of the advice.
        order = [advice.options[k].id for k in np.argsort(places, kind="stable")]
        methods.append(
            MethodOut(
                method=comparison.method,
                order=tuple(order),
                agrees_on_first=places[0] == 1,
                share_first=places.count(1),
            )
        )
    return tuple(methods)


def _comparison(advice: Advice) -> ComparisonOut:
    """Return what methods of other families say of the leading options."""
    # Among many options majorities run in circles, which outranking calls level.
    leading = advice.options[:PAIRED]
    weights = np.array([advice.weights[name] for name in CRITERIA])
    opinion = second_opinion(expected_merits(leading), weights)
    return ComparisonOut(methods=_methods(advice, opinion.orders), remark=opinion.remark)


def advice_out(
    advice: Advice,
    top: int | None = None,
    *,
    compare: bool = False,
    changed: bool = False,
    firmly: bool = False,
) -> AdviceOut:
    """Return the advice as plain data.

    Parameters
    ----------
    advice : Advice
        What `advise` returned.
    top : int, optional
        How many options to hold; all if absent.
    compare : bool, optional
        Whether to ask methods of other families too, by a library slow to load.
    changed : bool, optional
        Whether to weigh the smallest changes too, where little comes right.
    firmly : bool, optional
        Whether to say how firm the choice is too, which takes some hundredths of a second.

    Returns
    -------
    AdviceOut
        Ready for JSON.
    """
    shown = advice.options[:top]
    plain = advice.as_bought
    rejected = advice.rejected if advice.options else nearest_first(advice)
    first_two, budget = advice.options[:2], advice.asked.limit.budget
    return AdviceOut(
        schema_version=SCHEMA_VERSION,
        part=advice.asked.part.name,
        verdict=advice.verdict,
        headline=headline(advice),
        toss_up=advice.toss_up,
        why_first=why_before(advice, *first_two) if len(first_two) == 2 else None,
        as_bought=plain.id if plain else None,
        options=tuple(_option(advice, o, place) for place, o in enumerate(shown, start=1)),
        alternatives=alternatives(advice),
        barred=barred(advice),
        rack=rack(advice),
        would_change=would_change(advice),
        changes=changes(advice) if changed else (),
        firm=firm(advice) if firmly else None,
        rejected=_every(rejected, budget),
        apart=_every(advice.apart, budget),
        zones=tuple(zone_out(d) for d in advice.job.demands),
        remarks=remarks(advice),
        assumptions=assumptions(advice),
        cautions=cautions_shown(advice),
        coupon=trial_steps(advice.job),
        ranges=tuple(
            RangeOut(
                criterion=row.criterion,
                words=row.words,
                unit=row.unit,
                ideal=row.ideal,
                worst=row.worst,
                scale=row.scale,
                basis=row.basis,
                weight=advice.weights[row.criterion],
            )
            for row in advice.ranges
        ),
        pairwise=tuple(
            ShareOut(first=a, second=b, share=round(share, 4))
            for (a, b), share in advice.shares.items()
        ),
        other_methods=_methods(advice, advice.comparisons),
        comparison=_comparison(advice) if compare else None,
    )


def schema() -> dict[str, Any]:
    """Return the JSON schema of the advice."""
    return AdviceOut.model_json_schema()
