"""What a piece that the workshop has not got would buy: the advice with it against without."""

from collections.abc import Callable, Iterator
from typing import get_args

from catalog import Catalog
from catalog.route import Route
from catalog.steel import Steel
from selector.advice.advise import Advice
from selector.advice.altered import OIL_L, article
from selector.advice.change import in_short, nearest, weighed_anew
from selector.advice.let_in import way_of
from selector.advice.piece import pieces
from selector.advice.record import PieceOut
from selector.decision.option import Option
from selector.decision.preference import in_order
from selector.errors import Problem, RequirementError
from selector.job.treatment import Treatment
from selector.requirement import Requirement
from selector.requirement.workshop import Bath, Check, Heat, Measure, TemperMeans, Workshop
from selector.wording import in_sentence

# So many of the first, and of what came nearest, are looked at with a piece.
LEADING = 2
# What gains less is no gain: of all in 100, and of the cost of a good part. [-]
LEAST_RIGHT, LEAST_SAVED = 0.02, 0.03
# What a table of all leaves out: it seldom decides, and each piece takes a second.
SELDOM = frozenset(
    {"brine", "polymer", "vegetable-oil", "hot-salt", "salt-bath", "charcoal-forge", "eye",
     "propylene-torch", "torch", "plate", "oven", "furnace", "magnet", "infrared", "file",
     "glass", "rebound", "coupon", "coat"}
)  # fmt: skip
MEANS = ("oven", "furnace", "plate", "torch")
PROTECT = ("foil", "coat")


def having(asked: Requirement, name: str, catalog: Catalog) -> Requirement:
    """Return a requirement for the workshop with one piece more.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    name : str
        A heat source, bath, means of tempering, instrument, check or wrapping as the file names
        it, or "subcontract".
    catalog : Catalog
        What is known.

    Returns
    -------
    Requirement
        The same for a workshop that has it.

    Raises
    ------
    RequirementError
        When no such piece is known, or the workshop has it.
    """
    shop = asked.workshop
    lacking = tuple(missing(shop, catalog))
    if name not in lacking:
        rule = "a piece that is known and that the workshop has not got"
        step = f"Choose one of: {', '.join(lacking)}; or any, for a table of all."
        raise RequirementError(Problem("--with", rule, repr(name), step))
    more: dict[str, object] = {}
    if name in catalog.heat_sources:
        more = {"heat": (*shop.heat, Heat(source=name))}
    elif name in catalog.media:
        more = {"bath": (*shop.bath, Bath(medium=name, volume=OIL_L))}
    elif name == "subcontract":
        more = {"subcontract": True}
    elif name in MEANS:
        means = TemperMeans.model_validate({"means": name})
        more = {"temper": (*shop.temper, means)}
    else:
        field = "measure" if name in get_args(Measure) else "check"
        field = "protect" if name in PROTECT else field
        more = {field: (*getattr(shop, field), name)}
    return asked.model_copy(update={"workshop": shop.model_copy(update=more)})


def missing(shop: Workshop, catalog: Catalog) -> Iterator[str]:
    """Yield the pieces that a workshop has not got, by the names of its file."""
    has = {*pieces(shop), *shop.protect, "air"}
    every = (
        *catalog.heat_sources, *catalog.media, *MEANS, *get_args(Measure), *get_args(Check),
        *PROTECT, "subcontract",
    )  # fmt: skip
    yield from (name for name in every if name not in has)


def worths(advice: Advice) -> tuple[PieceOut, ...]:
    """Return what each missing piece gains, those that gain most first.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of PieceOut
        Pieces with which something else comes first that is right more often or costs less;
        what changes nothing is left out. Empty where lives depend on the part.
    """
    if advice.asked.safety_critical:
        return ()
    catalog = advice.job.catalog
    first = advice.options[:1]
    found = []
    for name in missing(advice.asked.workshop, catalog):
        if name in SELDOM:
            continue
        asked = having(advice.asked, name, catalog)
        with_it = weighed_anew(advice, asked, _touched(advice, name))
        # What the piece does not touch stands as it did.
        best = next(iter(in_order([*with_it, *first], asked)), None)
        piece = None if best is None else _worth(advice, name, best)
        if piece is not None:
            found.append(piece)
    return tuple(sorted(found, key=lambda piece: (-piece.more_right, -(piece.saves or 0.0))))


def _touched(advice: Advice, name: str) -> Callable[[Steel, Route], bool]:
    """Return which routes of which steels a piece can do something for."""
    catalog = advice.job.catalog
    leading = [option.treatment for option in advice.options[:LEADING]]
    steels = nearest(advice) | {work.steel.slug for work in leading}
    ways = {way_of(work) for work in (*leading, *_near(advice))}
    source = catalog.heat_sources.get(name)
    tempers = source is None or source.kind in {"furnace", "oven"}
    tempers = tempers and name not in catalog.media and name != "subcontract"

    def touched(steel: Steel, route: Route) -> bool:
        named = name in {*route.heat_sources, *route.media, route.place}
        return (named and steel.slug in steels) or (
            tempers and (steel.slug, route.slug) in ways
        )

    return touched


def _near(advice: Advice) -> list[Treatment]:
    """Return the treatments turned down that came nearest to coming out right."""
    near = sorted(advice.rejected, key=lambda item: -item.share)
    return [item.treatment for item in near[:LEADING] if item.share > 0.0]


def _worth(advice: Advice, name: str, option: Option) -> PieceOut | None:
    """Return what a piece gains by the option that comes first with it, None if nothing."""
    cost, right = option.judged.value("cost"), option.judged.passing_all
    now = advice.options[0] if advice.options else None
    more = right - (now.judged.passing_all if now else 0.0)
    saves = now.judged.value("cost") - cost if now else None
    little = saves is not None and saves < LEAST_SAVED * (cost + saves)
    if now is not None and (now.id == option.id or (more < LEAST_RIGHT and little)):
        return None
    return PieceOut(
        piece=name,
        words=piece_words(name, advice.job.catalog),
        id=option.id,
        first=in_short(advice, option),
        cost=round(cost, 2),
        currency=advice.job.catalog.prices.currency,
        passing_all=round(right, 4),
        saves=None if saves is None else round(saves, 2),
        more_right=round(more, 4),
    )


def piece_words(name: str, catalog: Catalog) -> str:
    """Return a piece in words: "a pottery kiln", "a bath of fast oil"."""
    if name in catalog.heat_sources:
        return article(in_sentence(catalog.heat_sources[name].name))
    if name in catalog.media:
        return f"a bath of {name.replace('-', ' ')}"
    words = {
        "subcontract": "a firm to send it to",
        "eye": "a trained eye",
        "foil": "foil to wrap it in",
        "coat": "a coat against the air",
        "glass": "glass to scratch",
        "rebound": "a rebound tester",
        "tester": "a hardness tester",
        "hardness-files": "hardness files",
        "coupon": "a coupon of the bar",
    }
    if name in MEANS:
        return f"{article(name)} to temper in" if name != "torch" else "a torch to temper with"
    return words.get(name, article(name.replace("-", " ")))
