"""What an option is called in a line."""

from selector.record import OptionOut
from selector.wording import chance_words, condition_words
from ui.labels import lower


def in_short(option: OptionOut) -> str:
    """Return an option by its place, bar, way and bath, for a list to choose from."""
    return f"{option.place} · {_done(option)}"


def unplaced(option: OptionOut) -> str:
    """Return an option in one line: bar, way, bath, chance."""
    return f"{_done(option)}; {chance_words(option.passing_all, option.within_budget)}"


def beside(option: OptionOut, first: OptionOut) -> str:
    """Return what an option is called beside the first: all of it if both are of one steel."""
    return _done(option) if option.spoken == first.spoken else option.spoken


def _done(option: OptionOut) -> str:
    """Return what is done with which bar."""
    bar = f"{option.spoken}, {condition_words(option.condition)}"
    by = f" in {option.medium.replace('-', ' ')}" if option.medium else ""
    return f"{bar}: {lower(option.route_name)}{by}"
