"""The cautions of an advice: those of its part and of the options that lead it."""

from catalog.caution import Caution
from selector.advice.advise import Advice
from selector.option.caution import cautions

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
    leading = [option.judged.prediction for option in advice.options[:LEADING]]
    cracked = [r.treatment.steel for r in advice.rejected if r.gate.name == "cracking"]
    return cautions(advice.job, leading, () if leading else cracked)
