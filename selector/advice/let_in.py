"""The least change that lets in what was turned down."""

from collections.abc import Iterable, Iterator

from catalog.route import Route
from catalog.steel import Steel
from selector.advice.advise import Advice
from selector.advice.altered import Change, demands_eased, sent_out, sources_for, thought_of
from selector.advice.change import change_out, weighed_anew
from selector.advice.record import ChangeOut
from selector.decision.option import Rejected
from selector.job.treatment import Treatment

Way = tuple[str, str]


def way_of(work: Treatment) -> Way:
    """Return steel and route of a treatment."""
    return (work.steel.slug, work.route.slug)


def let_in(advice: Advice, stopped: Iterable[Rejected]) -> dict[Way, ChangeOut]:
    """Return the least change that lets each steel and route in, where one does.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    stopped : iterable of Rejected
        What was turned down.

    Returns
    -------
    dict of (str, str) to ChangeOut
        By slugs of steel and route. Tools are tried before demands, and where a route wants a
        tool, that tool with one demand eased. Empty where lives depend on the part.
    """
    found: dict[Way, ChangeOut] = {}
    if advice.asked.safety_critical:
        return found
    every = {way_of(item.treatment) for item in stopped}
    wanting = {way_of(i.treatment) for i in stopped if i.gate.name == "equipment"}
    routes = [i.treatment.route for i in stopped if i.gate.name == "equipment"]
    tools = [*sources_for(advice.asked, routes, advice.job.catalog), *sent_out(advice.asked)]
    for change in tools:
        _try(advice, change, wanting, found)
    for change in thought_of(advice):
        _try(advice, change, every - wanting, found)
    for change in _with_a_demand(tools):
        _try(advice, change, wanting, found)
    return found


def _with_a_demand(tools: list[Change]) -> Iterator[Change]:
    """Yield each tool with one demand eased besides."""
    for tool in tools:
        for more in demands_eased(tool.asked):
            text = f"{tool.text} and {more.text[:1].lower()}{more.text[1:]}"
            yield Change(text, more.asked)


def _try(advice: Advice, change: Change, ways: set[Way], found: dict[Way, ChangeOut]) -> None:
    """Note what a change lets in of what is still out."""
    out = ways - found.keys()

    def wanted(steel: Steel, route: Route) -> bool:
        return (steel.slug, route.slug) in out

    if not out:
        return
    for option in weighed_anew(advice, change.asked, wanted):
        found.setdefault(way_of(option.treatment), change_out(advice, change.text, option))
