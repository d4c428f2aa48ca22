"""The cautions of an advice: those of its part and of the options that lead it."""

from catalog.caution import Caution
from selector.advice.advise import Advice
from selector.option.caution import cautions
from selector.option.first_screen import cautions_out
from selector.option.prediction import Prediction
from selector.record import CautionOut

# So many leading options are looked at.
LEADING = 3


def advice_cautions(advice: Advice) -> tuple[tuple[str, Caution], ...]:
    """Return the cautions of part and leading options, by step of the work.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple
        Pairs of id and caution.
    """
    leading = _leading(advice)
    cracked = [r.treatment.steel for r in advice.rejected if r.gate.name == "cracking"]
    return cautions(advice.job, leading, () if leading else cracked)


def cautions_shown(advice: Advice) -> tuple[CautionOut, ...]:
    """Return all cautions as plain data, those of the first screen marked.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of CautionOut
        By step of the work.
    """
    return cautions_out(advice.job, _leading(advice), advice_cautions(advice))


def _leading(advice: Advice) -> list[Prediction]:
    """Return what comes of the leading options."""
    return [option.judged.prediction for option in advice.options[:LEADING]]
