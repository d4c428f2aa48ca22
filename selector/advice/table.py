"""The ranked options as one table of plain numbers: the CSV of command line and page."""

import pandas as pd

from selector.advice.record import AdviceOut, FirmOptionOut
from selector.record import Spread


def option_table(advice: AdviceOut) -> pd.DataFrame:
    """Return every ranked option as plain numbers, each column with its unit."""
    firm = {} if advice.firm is None else {row.id: row for row in advice.firm.options}
    return pd.DataFrame(
        {
            "place": o.place,
            "id": o.id,
            "steel": o.steel,
            "family": o.family_name,
            "condition": o.condition,
            "route": o.route_name,
            "medium": o.medium,
            "temper_c": o.temper.temperature_c,
            "temper_min": o.temper.time_min,
            "verdict": o.verdict,
            "comes_out_right_fraction": o.passing_all,
            "within_budget_fraction": o.within_budget,
            "score": o.score,
            **(_firm(firm[o.id], o.cost.currency) if firm else {}),
            **_ends("surface_hrc", o.hardness.surface),
            **_ends("core_hrc", o.hardness.core),
            **_ends("depth_mm", o.hardness.depth_mm),
            **_ends("movement_mm", o.movement_mm),
            **_ends(f"cost_{o.cost.currency.lower()}", o.cost.spread),
            "days": o.days,
            "chief_risk": o.chief_risk,
        }
        for o in advice.options
    )


def _firm(row: FirmOptionOut, currency: str) -> dict[str, float]:
    """Return how firm the place of an option is as columns."""
    return {
        "first_fraction": row.first,
        "top_three_fraction": row.top_three,
        f"regret_{currency.lower()}": row.regret_money,
    }


def _ends(name: str, spread: Spread) -> dict[str, float | None]:
    """Return the middle and the ends of a spread as three columns."""
    return {name: spread.p50, f"{name}_p05": spread.p05, f"{name}_p95": spread.p95}


def piece_table(advice: AdviceOut) -> pd.DataFrame:
    """Return what each missing piece gains as plain numbers, each column with its unit."""
    return pd.DataFrame(
        {
            "piece": piece.piece,
            "id": piece.id,
            "comes_out_right_fraction": piece.passing_all,
            "more_right_fraction": piece.more_right,
            f"cost_{piece.currency.lower()}": piece.cost,
            f"saves_{piece.currency.lower()}": piece.saves,
        }
        for piece in advice.pieces
    )
