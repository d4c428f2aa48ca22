"""The letter of a requirement: advised, composed, changed by hand, and ready to be set."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from catalog import Catalog
from selector.advice.advise import Advice, advise
from selector.advice.output import advice_out
from selector.advice.record import AdviceOut
from selector.decision.option import Option
from selector.decision.output import option_out
from selector.errors import Problem, RequirementError
from selector.handover.drawing.part_drawing import Drawing
from selector.handover.letter.editable import changed, strange_figures, text_of, written_for
from selector.handover.letter.letter import composed
from selector.handover.letter.made import SUFFIXES, Sender, made
from selector.handover.letter.picture import picture
from selector.handover.letter.record import Letter, Tone
from selector.handover.sheet import Paper, Sheet, checked_suffix
from selector.record import OptionOut
from selector.requirement import Requirement
from selector.versus.option_id import firms_allowed
from selector.versus.side import judged_option

_OLD = "The text is of option {old}, this letter of {new}."
_STRANGE = "Not a figure of the advice: {figure}."


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """A letter and its text, or the headline of an advice that has nothing to offer.

    `fresh` is the letter as the advice stands, where its text was changed.
    """

    headline: str
    letter: Letter | None
    fresh: Letter | None = None
    drawn: Callable[[], Drawing | None] = lambda: None
    remarks: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """The letter as a text to change."""
        return "" if self.letter is None else text_of(self.letter)

    def set(self, sender: Sender, how: tuple[str, Paper]) -> Sheet:
        """Return the letter as the content of a file: suffix and paper."""
        if self.letter is None:
            msg = "an advice without an option has no letter"
            raise ValueError(msg)
        return made(self.letter, sender, self.drawn(), self.fresh, how)

    def saying(self, remarks: tuple[str, ...]) -> "Answer":
        """Return the same with more to say."""
        return replace(self, remarks=(*self.remarks, *remarks))


def checked_files(out: Path | None, text: Path | None) -> None:
    """Refuse a letter that goes nowhere, or into a file of another kind.

    Parameters
    ----------
    out, text : Path or None
        Where letter and text are to go.

    Raises
    ------
    RequirementError
        When neither is named, or the letter's name ends otherwise.
    """
    if out is None and text is None:
        step = "For instance --out letter.pdf, or --text letter.txt to change it first."
        raise RequirementError(Problem("--out", "given, or --text", "neither", step))
    if out is not None:
        checked_suffix(out, SUFFIXES)


def answer(
    asked: Requirement, known: Catalog, name: str | None, tone: Tone, told: str | None = None
) -> Answer:
    """Return the letter of one option, or of the first.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    known : Catalog
        What is known.
    name : str or None
        Id of the option.
    tone : str
        "brief" or "full".
    told : str or None
        A text to set in its place, as `--text` wrote it.

    Returns
    -------
    Answer
        Without a letter where no option is left.

    Raises
    ------
    RequirementError
        When no such option exists.
    """
    wider = asked if name is None else firms_allowed(asked, (name,), known)
    advice = advise(wider, known)
    said = advice_out(advice)
    if asked.safety_critical:
        return _changed(Answer(said.headline, composed(asked, said, None, tone)), None, told)
    option = _option(advice, name)
    if option is None:
        return Answer(said.headline, None)
    shown = _shown(advice, said, option)
    first = Answer(
        said.headline,
        composed(asked, said, shown, tone),
        drawn=lambda: picture(advice.job, option),
    )
    return _changed(first, composed(asked, said, shown, "full"), told)


def _changed(first: Answer, full: Letter | None, told: str | None) -> Answer:
    """Return a letter with a text set in its place, and what is strange in it."""
    if told is None or first.letter is None:
        return first
    fresh = full or first.letter
    letter = changed(first.letter, told)
    remarks = [_STRANGE.format(figure=line) for line in strange_figures(letter, fresh)]
    old = written_for(told)
    if old is not None and old != (fresh.option or "none"):
        remarks.insert(0, _OLD.format(old=old, new=fresh.option or "none"))
    return replace(first, letter=letter, fresh=fresh, remarks=tuple(remarks))


def _option(advice: Advice, name: str | None) -> Option | None:
    """Return the option of an id, the first without one; None where none is left."""
    if name is None:
        return advice.options[0] if advice.options else None
    return next(
        (option for option in advice.options if option.id == name.strip()), None
    ) or judged_option(name, advice.job)


def _shown(advice: Advice, said: AdviceOut, option: Option) -> OptionOut:
    """Return an option as plain data, also one that the advice does not list."""
    listed = next((other for other in said.options if other.id == option.id), None)
    return listed or option_out(advice.job, option, 0, advice.ranges)
