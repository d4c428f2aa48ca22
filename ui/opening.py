"""What a part starts from: a blank sheet, a shipped example, a file of the visitor's own."""

from pathlib import Path

from catalog.example import example_text
from selector.errors import RequirementError
from selector.requirement.read import parsed, parsed_file
from ui import form, session, store
from ui.draft import Draft, blank
from ui.fitting import answered, unfit
from ui.meanwhile import spelled_out

# So many faults of a file are told one by one.
_TOLD = 12


def blank_part(aim: str) -> None:
    """Take up a blank part; its answer is sought in the view `aim`."""
    session.start(blank(), aim=aim)


def example(name: str) -> Draft:
    """Return a shipped example without its safety use, which each user must answer.

    Parameters
    ----------
    name : str
        One of the shipped names.

    Returns
    -------
    dict
        A draft of the form.
    """
    data = parsed(f"{name}.toml", example_text(name).encode())
    data.pop("safety_use", None)
    return spelled_out(data)


def kept_file(path: Path) -> str:
    """Return the id of a part kept from a file, before any visitor is there."""
    key = store.new_id()
    store.keep_part(key, {"draft": spelled_out(answered(parsed_file(path))), "tried": True})
    return key


def take_file(name: str, content: bytes) -> bool:
    """Take up the part in a file, or keep why it was not taken.

    Parameters
    ----------
    name : str
        Name of the file.
    content : bytes
        All of it.

    Returns
    -------
    bool
        Whether it was taken: answers that break a rule are, to be mended in the form.
    """
    try:
        data = answered(parsed(name, content))
    except RequirementError as error:
        session.refuse(error.problems)
        return False
    problems = unfit(data)
    session.refuse(problems)
    if not problems:
        session.start(spelled_out(data), tried=True)
    return not problems


def why_refused() -> list[str]:
    """Return every reason why the last file was not taken, each with the key of its field."""
    problems = session.refused()
    said = [f"Not taken. {form.sentence(problem)}" for problem in problems[:_TOLD]]
    if len(problems) > _TOLD:
        said.append(f"and {len(problems) - _TOLD} faults more.")
    return said
