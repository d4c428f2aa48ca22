"""Two options head to head: what each costs, needs and risks, and where they change places."""

from catalog import Catalog, load_catalog
from selector.decision.option import Option
from selector.decision.output import (
    cost_out,
    failing_out,
    failure_cost_out,
    movement_out,
    rounded_share,
    temper_out,
)
from selector.job.job import Job, resolved
from selector.job.process import reading_error
from selector.job.supply import at_hand_words
from selector.option.caution import of_option
from selector.option.cracking import crack_words
from selector.option.first_screen import first_screen
from selector.record import gate_out, sampled_out, spread_out
from selector.requirement import Requirement
from selector.requirement.workshop import Workshop
from selector.undisturbed import undisturbed
from selector.versus.axis import QUANTITIES
from selector.versus.option_id import firms_allowed
from selector.versus.record import SideOut, VersusOut
from selector.versus.side import Pair, side_of
from selector.versus.swap import swaps
from selector.versus.words import headline
from selector.wording import condition_words, in_sentence


@undisturbed()
def versus(
    asked: Requirement,
    first: str,
    second: str,
    catalog: Catalog | None = None,
    job: Job | None = None,
) -> VersusOut:
    """Return two options set against each other.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    first, second : str
        Ids of two options.
    catalog : Catalog, optional
        What is known; the shipped catalogue if absent.
    job : Job, optional
        The same resolved already, with what was simulated in it: it need not be done again.

    Returns
    -------
    VersusOut
        Ready for JSON, terminal and plot.

    Raises
    ------
    RequirementError
        When an id names no option this workshop could attempt.
    """
    known = catalog or load_catalog()
    wider = firms_allowed(asked, (first, second), known)
    if job is None or wider is not asked:
        job = resolved(wider, known)
    pair = Pair(side_of(first, job), side_of(second, job), job)
    one, other = (_side_out(option, job) for option in pair.options())
    turns, bills = tuple(swaps(pair)), [pair.of_quantity(n).bills() for n in QUANTITIES]
    prices = job.catalog.prices
    return VersusOut(
        part=asked.part.name,
        headline=headline(one, other, turns) + (_SENT_OUT if wider is not asked else ""),
        first=one,
        second=other,
        swaps=turns,
        currency=prices.currency,
        invented_prices=prices.invented,
        quantity=QUANTITIES,
        first_cost=tuple(cost_out(bill) for bill, _ in bills),
        second_cost=tuple(cost_out(bill) for _, bill in bills),
    )


# A firm is named by the one who compares, so it is weighed, and said.
_SENT_OUT = " Sending out is weighed here though nothing was to be sent out."


def _side_out(option: Option, job: Job) -> SideOut:
    """Return one side as plain data."""
    work, prediction = option.treatment, option.judged.prediction
    figures = {name: spread_out(value) for name, value in prediction.figures().items()}
    crack = prediction.crack
    return SideOut(
        id=option.id,
        steel=work.steel.name,
        spoken=work.steel.spoken,
        condition=work.condition.name,
        route=work.route.name,
        temper=temper_out(option.choice),
        surface=figures["surface"],
        core=figures["core"],
        depth_mm=figures["depth_mm"],
        movement_mm=movement_out(prediction.movement),
        cost=cost_out(prediction.bill),
        items=prediction.bill.as_json(),
        days=prediction.bill.days,
        score=round(option.score, 4),
        passing_all=round(option.judged.passing_all, 4),
        within_budget=rounded_share(option.judged.within_budget),
        crack_class=crack.risk.crack_class if crack.risk else None,
        crack_rate=sampled_out(
            crack.rate, "-", "log-uniform in its class", "hazards.cracking, estimated"
        ),
        failing=failing_out(option),
        failure_cost=failure_cost_out(option, job.asked),
        gates=tuple(gate_out(gate) for gate in option.judged.gates),
        needs=_needs(option, job.asked.workshop),
        risks=_risks(option),
        cautions=tuple(of_option(job, prediction)),
        warned=tuple(job.catalog.cautions[key].brief for key in first_screen(job, prediction)),
    )


def _needs(option: Option, shop: Workshop) -> tuple[str, ...]:
    """Return what an option takes: bar, heat, bath, temper, firm."""
    work, temper = option.treatment, option.choice.temper
    condition = condition_words(work.condition.name)
    needs = [f"{work.steel.spoken} bar, {condition} ({at_hand_words(work)})"]
    if work.source is not None:
        error = reading_error(work, shop)
        needs.append(f"{work.source.name}, heat known to about ±{error.bias_c:.0f} °C")
    if work.medium is not None and work.medium.slug != "air":
        needs.append(in_sentence(work.medium.name))
    if temper.means != "none":
        needs.append(f"temper at {temper.temperature_c:.0f} °C by {temper.means}")
    if work.route.place == "subcontract":
        needs.append("a firm, its minimum charge and the carriage")
    return tuple(needs)


def _risks(option: Option) -> tuple[str, ...]:
    """Return what can go wrong: gates not passed outright, cracking and its remedies."""
    judged = option.judged
    crack = judged.prediction.crack.risk
    # The gate of the crack says the same as the class of it does below.
    said = {"cracking"} if crack is not None else set()
    failing = [g for g in judged.gates if g.verdict != "pass" and g.name not in said]
    risks = [gate.text for gate in failing]
    if crack is not None:
        cure = f"; helps: {crack.mitigations[0]}" if crack.mitigations else ""
        risks.append(f"cracks in the quench: {crack_words(crack)}, estimated{cure}")
    if judged.prediction.treatment.by_eye and option.choice.sensitivity_hrc >= 0.5:
        risks.append(f"{option.choice.sensitivity_hrc:.0f} HRC for a colour misread by 25 °C")
    return tuple(risks)
