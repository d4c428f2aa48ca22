"""The one chart: what an option costs against how surely it comes out right, or how hard."""

from collections.abc import Iterable, Mapping
from typing import Literal

import altair as alt
import pandas as pd

from selector.record import OptionOut, ZoneOut
from selector.wording import shown_spread, temper_words
from ui import labels

Against = Literal["chance", "hardness"]
# Colour-blind safe (Okabe and Ito 2008), the light ones darkened to stand out on white; each
# colour has its own shape, so that nothing hangs on colour alone.
_PALETTE = ("#0072b2", "#b34700", "#00734c", "#8a3f74", "#1d2327", "#7d6608")
_SHAPES = ("circle", "square", "triangle-up", "diamond", "cross", "triangle-down")
NAMED = 6
AGAINST: Mapping[Against, str] = {
    "chance": "Chance to come out right",
    "hardness": "Surface hardness",
}
ALT = (
    "Options by the cost of a good part, left to right, and by the measure chosen above, "
    "upwards. The table of ranked options holds the same figures."
)
_INK = "#1d2327"
_COLOUR = (
    alt.Color("route:N", title="Route")
    .scale(range=list(_PALETTE))
    .legend(
        orient="top", columns=3, labelLimit=400, symbolOpacity=1,
        labelColor=_INK, titleColor=_INK,
    )
)  # fmt: skip
_AXIS = alt.Axis(labelColor=_INK, titleColor=_INK, labelFontSize=12, titleFontSize=13)
_SHAPE = alt.Shape("route:N", title="Route").scale(range=list(_SHAPES))
_TOOLTIP = [
    alt.Tooltip("place:Q", title="Place"),
    alt.Tooltip("steel:N", title="Steel"),
    alt.Tooltip("family:N", title="Family"),
    alt.Tooltip("route:N", title="Route"),
    alt.Tooltip("temper:N", title="Temper"),
    alt.Tooltip("hardness_text:N", title="Surface hardness"),
    alt.Tooltip("chance_text:N", title="Comes out right"),
    alt.Tooltip("cost_text:N", title="Cost of a good part"),
]


def points(options: Iterable[OptionOut]) -> pd.DataFrame:
    """Return the options as the rows of the chart.

    Parameters
    ----------
    options : iterable of OptionOut
        Best first.

    Returns
    -------
    DataFrame
        Costs in the currency of the price list, hardness in HRC, chance in parts of 100.
    """
    return pd.DataFrame(
        {
            "place": o.place,
            "name": f"{o.place} {o.steel}" if o.place <= NAMED else f"{o.place}",
            "family": o.family_name,
            "steel": f"{o.steel}, {o.condition}",
            "route": o.route_name,
            "temper": temper_words(o.temper),
            "currency": o.cost.currency,
            "cost": o.cost.spread.p50,
            "cost_low": o.cost.spread.p05,
            "cost_high": o.cost.spread.p95,
            "chance": 100 * o.passing_all,
            "hardness": o.hardness.surface.p50,
            "hardness_low": o.hardness.surface.p05,
            "hardness_high": o.hardness.surface.p95,
            "cost_text": labels.money(o.cost),
            "hardness_text": shown_spread(o.hardness.surface),
            "chance_text": labels.share(o.passing_all),
        }
        for o in options
    )


def trade_off(
    options: Iterable[OptionOut], zones: Iterable[ZoneOut], against: Against
) -> alt.LayerChart:
    """Return cost against the chance to come out right, or against surface hardness.

    Bars reach from 5 to 95 in 100; the hardness aimed at is shaded.

    Parameters
    ----------
    options : iterable of OptionOut
        Best first.
    zones : iterable of ZoneOut
        What was asked.
    against : {"chance", "hardness"}
        The upright axis.

    Returns
    -------
    LayerChart
        Ready to be shown.
    """
    frame = points(options)
    base = alt.Chart(frame)
    cost = alt.X("cost:Q", title=f"Cost of a good part, {_currency(frame)}", axis=_AXIS).scale(
        zero=False, nice=False, padding=12
    )
    titles = {
        "chance": "Comes out right, times in 100",
        "hardness": "Surface hardness, HRC",
    }
    height = alt.Y(f"{against}:Q", title=titles[against], axis=_AXIS).scale(
        zero=False, padding=12
    )
    bars = base.mark_rule(opacity=0.4, strokeWidth=1.5)
    layers = [bars.encode(alt.X("cost_low:Q"), alt.X2("cost_high:Q"), height, _COLOUR)]
    if against == "hardness":
        upright = (alt.Y("hardness_low:Q"), alt.Y2("hardness_high:Q"))
        layers = [*_aimed_at(zones), *layers, bars.encode(cost, *upright, _COLOUR)]
    marks = base.mark_point(filled=True, size=110, opacity=1)
    # Names stand above and below their marks by turns, so that neighbours keep clear.
    for turn, dy in ((0, 15), (1, -9)):
        names = base.mark_text(align="left", dx=8, dy=dy, fontSize=12, color=_INK)
        layers += [
            names.encode(cost, height, alt.Text("name:N")).transform_filter(
                f"datum.place % 2 == {turn}"
            )
        ]
    # Marks come last: nothing may lie over what is pointed at.
    layers += [marks.encode(cost, height, _COLOUR, _SHAPE, tooltip=_TOOLTIP)]
    return alt.LayerChart(layer=layers).properties(height=480)


def _currency(frame: pd.DataFrame) -> str:
    """Return the currency of the chart."""
    return str(frame["currency"].iloc[0]) if len(frame) else ""


def _aimed_at(zones: Iterable[ZoneOut]) -> list[alt.Chart]:
    """Return the shaded hardness window of the first zone that has both ends."""
    windows = [
        {"low": zone.low_hrc, "high": zone.high_hrc}
        for zone in zones
        if zone.low_hrc is not None and zone.high_hrc is not None
    ][:1]
    return [
        alt.Chart(pd.DataFrame([window]))
        .mark_rect(color="#7d6608", opacity=0.13)
        .encode(alt.Y("low:Q"), alt.Y2("high:Q"))
        for window in windows
    ]
