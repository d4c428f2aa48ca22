"""What is sent out: the part made ready, the order, what is tried when it is back."""

from selector.figure import median
from selector.hardness_scale import hv_from_hrc
from selector.job.treatment import LAID_ON
from selector.procedure.bar import proved, relief, skimmed
from selector.procedure.checking import cracks, finished, hardness, truth
from selector.procedure.doing import Doing
from selector.procedure.practice import (
    COMMON,
    NITRIDE_GROWTH_MM,
    NITROCARBURISE_GROWTH_MM,
    RELIEF_RUNOUT_MM,
)
from selector.procedure.shape import left_mm, rounded
from selector.record import StepOut
from selector.wording import shown_limit, shown_range

# No window is narrower than this on an order: a firm cannot keep it. Common practice. [HRC]
LEAST_WINDOW_HRC = 4.0
# Above here Rockwell C says little of a thin layer, and Vickers is written. [HRC]
VICKERS_FROM_HRC = 65.0
# A firm's local heats, as they are ordered.
LOCAL_KINDS = {"induction": "induction", "firm-flame": "flame", "laser": "laser"}
# Steel from here up is baked after hard chromium (ASTM B650, from memory). [HRC]
BAKED_FROM_HRC = 31.0
NITRIDES, PLATES = "nitride", "chrome"
# A middle off the window by less is rounding. [HRC]
SLIGHT_HRC = 0.5


def ordered_steps(do: Doing) -> list[StepOut]:
    """Return the steps of an option that a firm heat-treats."""
    return [
        proved(do),
        *skimmed(do),
        *_relieved_first(do),
        rounded(do),
        _made_ready(do),
        order(do),
        hardness(do),
        *truth(do),
        *cracks(do),
        *(finished(do) if do.work.route.process not in LAID_ON else []),
    ]


def _relieved_first(do: Doing) -> list[StepOut]:
    """Return the stress relief of a part that must run true, before its last cut."""
    move = do.prediction.movement
    if not move.stated or move.permitted_mm > RELIEF_RUNOUT_MM:
        return []
    return [relief(do)]


def _made_ready(do: Doing) -> StepOut:
    """Return how the part is made before it goes out."""
    process = do.work.route.process
    nitro = do.work.route.slug == "subcontract-nitrocarburise"
    if process == PLATES:
        plate_mm = _depth_mm(do) or 0.0
        action = f"Finish and polish, {plate_mm:g} mm a side under size for the plate"
        return _ready(f"{action}; round the edges", plate_mm)
    if process == NITRIDES:
        growth = NITROCARBURISE_GROWTH_MM if nitro else NITRIDE_GROWTH_MM
        micron = f"{1000 * growth:.0f} µm"
        made = "Grind" if do.part.stock_removal or do.part.finish_after else "Finish"
        action = (
            f"{made} to size now, less up to {micron} a face, for it grows and nothing but a "
            "polish comes after; clean, no grease"
        )
        return _ready(action, growth)
    stock = left_mm(do)
    if stock > 0.0:
        action = f"Leave {stock:.2f} mm a side on working faces, to be ground when hard"
        return _ready(f"{action}; the rest to size, clean and dry", stock)
    thick, long = max(section.size for section in do.part.section), do.part.length_mm
    size = f"{thick:g} mm thick at most, {long:g} mm long"
    return _ready(f"Machine all of it to size, {size}; clean and dry", thick)


def _ready(action: str, length_mm: float) -> StepOut:
    """Return the last step at the bench before the post."""
    return StepOut(
        stage="prepare",
        action=action,
        means="micrometer",
        check="measured, written down, name of the steel wired to the part",
        length_mm=length_mm,
        source=COMMON,
    )


def order(do: Doing) -> StepOut:
    """Return what is written on the order."""
    lines = [f"steel {do.steel.spoken}, {do.work.condition.name}", *_asked(do), *_sparing(do)]
    return StepOut(
        stage="order",
        action="Write on the order: " + "; ".join(lines),
        short=f"order: {'; '.join(_asked(do)[: _told(do)])}",
        means=do.work.route.name[:1].lower() + do.work.route.name[1:],
        check="the firm writes steel, window and place of test back to you",
        otherwise="a firm that does not ask for the steel is not the one",
        hardness_hrc=_window_hrc(do),
        length_mm=_depth_mm(do),
        temperature_c=_their_temper_c(do),
        source=COMMON,
    )


def _told(do: Doing) -> int:
    """Return how many lines of an order stand on the first screen: window, and depth."""
    # The thickness of a plate stands in the first.
    apart = _depth_mm(do) is not None and do.work.route.process != PLATES
    return 2 if apart else 1


def _window_hrc(do: Doing) -> tuple[float, float]:
    """Return the window of an order: what is asked, or the forecast where that misses it."""
    low, high = do.surface_hrc
    asked_low, asked_high = do.lead.low_hrc, do.lead.high_hrc
    middle = median(do.prediction.surface_hrc)
    missed = (asked_low is not None and middle < asked_low - SLIGHT_HRC) or (
        asked_high is not None and middle > asked_high + SLIGHT_HRC
    )
    if do.work.route.process in {*LAID_ON, "age"}:
        return low, high
    if not missed:
        low = asked_low if asked_low is not None else low
        high = asked_high if asked_high is not None else max(high, low + LEAST_WINDOW_HRC)
    short = max(LEAST_WINDOW_HRC - (high - low), 0.0)
    return round(low, 1), round(high + short, 1)


def _window_words(do: Doing) -> str:
    """Return the window with its method: "54 to 58 HRC", or Vickers of a thin hard layer."""
    low, high = _window_hrc(do)
    if do.work.route.process in LAID_ON or high > VICKERS_FROM_HRC:
        vickers = float(hv_from_hrc(low, outside="extend"))
        return f"at least {10 * round(vickers / 10.0):.0f} HV 1 at the surface"
    return f"{shown_range(low, high)}, Rockwell" if low >= 20.0 else shown_range(low, high)


def _depth_mm(do: Doing) -> float | None:
    """Return the depth that is ordered: what is asked, within what the route gives. [mm]."""
    route = do.work.route
    span = route.depth_mm
    if span is None:
        return None
    last = do.work.route.process in LAID_ON
    asked_mm = do.lead.depth_mm if last else do.job.ordered_depth_mm
    return round(min(max(asked_mm, span.low), span.high), 3)


def _asked(do: Doing) -> list[str]:
    """Return the lines of an order that say what is to be done."""
    process, kind = do.work.route.process, do.work.route.kind
    window, depth = _window_words(do), _depth_mm(do)
    if kind in LOCAL_KINDS:
        ends = f"{do.zone_start_mm:g} to {do.zone_end_mm:g} mm from the marked end"
        return [
            f"{LOCAL_KINDS[kind]} harden {ends} to {window}",
            f"depth {depth:g} mm or more to 80 % of that hardness (ISO 18203)",
            f"temper at once, {do.temper.temperature_c:.0f} °C or as the window needs",
            "run out well clear of shoulder and holes, or carry it past",
        ]
    if process == "case":
        return [
            f"carburise, harden and temper to {window} at the surface",
            f"case {depth:g} to {(depth or 0.0) + 0.2:.1f} mm to 550 HV (ISO 18203), "
            "after grinding" if do.part.stock_removal else
            f"case {depth:g} to {(depth or 0.0) + 0.2:.1f} mm to 550 HV (ISO 18203)",
            f"temper about {do.temper.temperature_c:.0f} °C",
        ]  # fmt: skip
    if process in LAID_ON:
        laid_on = _plating if process == PLATES else _nitriding
        return laid_on(do, window, depth)
    if process == "austemper":
        salt = f"salt at about {do.temper.temperature_c:.0f} °C: hardness goes first"
        return [f"austemper to {window}", salt, "no temper after"]
    if process == "age":
        hold_h = do.temper.time_s / 3600.0
        return [f"age {do.temper.temperature_c:.0f} °C, {hold_h:g} h, to {window}"]
    twice = f", {do.temper.cycles} times" if do.temper.cycles > 1 else ""
    tempered = f"temper about {do.temper.temperature_c:.0f} °C{twice}: hardness goes first"
    if do.temper.means == "none":
        tempered = "temper as the window needs"
    cold = do.work.route.cold_c
    frozen = [] if cold is None else [
        f"cool on to {cold.value:.0f} °C or below right after the quench, before the temper"
    ]  # fmt: skip
    salt = " in salt, through a hot salt bath," if process == "marquench" else ""
    return [f"harden{salt} and temper to {window}", *frozen, tempered]


def _plating(do: Doing, window: str, depth: float | None) -> list[str]:
    """Return the lines of an order for hard chromium."""
    lines = [
        f"hard chrome {1000 * (depth or 0.0):.0f} µm after grinding, {window}",
        "edges rounded, holes and threads masked",
    ]
    if median(do.prediction.core_hrc) >= BAKED_FROM_HRC:
        lines.append("bake at 190 to 220 °C, begun within 4 h, and below its temper")
    return lines


def _nitriding(do: Doing, window: str, depth: float | None) -> list[str]:
    """Return the lines of an order to nitride or nitrocarburise."""
    if do.work.route.slug == "subcontract-nitrocarburise":
        return [
            f"nitrocarburise, {window}",
            f"compound layer {1000 * (depth or 0.01):.0f} µm or more, polished and oiled after",
        ]
    return [
        f"gas or plasma nitride to {window}",
        f"depth {depth:g} mm to core + 50 HV (ISO 18203), compound layer thin",
    ]


def _sparing(do: Doing) -> list[str]:
    """Return the lines of an order that say what to spare and where to test."""
    lines = [f"test on {'the zone at the marked end' if do.is_local else 'the marked face'}"]
    threads = [f.kind for f in do.part.feature if f.kind == "thread"]
    if threads and do.work.route.process in {"case", *LAID_ON}:
        lines.append("mask the thread")
    if do.is_local:
        lines.append("do not heat the rest")
    if do.prediction.movement.stated:
        hung = ", hung upright" if do.is_slender else ""
        lines.append(f"true within {shown_limit(do.prediction.movement.permitted_mm)}{hung}")
    return [*lines, f"{do.part.quantity} off, paper with the readings"]


def _their_temper_c(do: Doing) -> float | None:
    """Return the temper that the firm is told, where there is one. [°C]."""
    return None if do.temper.means == "none" else do.temper.temperature_c
