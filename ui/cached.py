"""What is computed once and kept: the catalogue, and the answers of recent requirements."""

import ctypes
import gc
import os
from contextlib import suppress
from functools import partial
from pathlib import Path
from threading import Event, Lock, Thread

import streamlit as st

from catalog import Catalog, load_catalog
from catalog.example import FIRST, example_text
from selector import Requirement, advise
from selector.advice.advise import Advice
from selector.advice.firm import firm
from selector.advice.output import advice_out
from selector.advice.record import AdviceOut, ComparisonOut, FirmOut
from selector.decision.standing import Standing, standing_of
from selector.decision.weighing import silent
from selector.flame.answer import FlameAnswer, flame_answer
from selector.flame.output import flame_out
from selector.flame.record import FlameOut
from selector.job.job import resolved
from selector.job.reach import Able
from selector.job.reach import able as able_of
from selector.need.need import need as need_of
from selector.need.record import NeedOut
from selector.requirement import requirement_from
from selector.requirement.read import parsed
from selector.versus.record import VersusOut
from selector.versus.versus import versus as versus_of
from ui.ahead import Ahead, Progress

# An advice holds its samples, some eighty megabytes; so few are kept that memory stays level.
_ADVICES = 3
# An advice was made, and another may have gone for it.
_let_go = Event()
# What is read while the server starts is not read again by the first view.
_reading = Lock()


def catalog() -> Catalog:
    """Return the shipped catalogue under the folders that the page was started with."""
    folders = os.environ.get("TEMPERWRIGHT_CATALOG", "")
    with _reading:
        return load_catalog(*(Path(folder) for folder in folders.split(os.pathsep) if folder))


@st.cache_resource(show_spinner=False)
def warm() -> Thread:
    """Return the thread that loads the compiled loop while the visitor still describes."""

    def first_need() -> None:
        asked = requirement_from(parsed("first.toml", example_text(FIRST).encode()))
        advise(asked, catalog(), steel=next(iter(catalog().steels)))
        # What is loaded by now stays for good, and need not be looked through for garbage.
        gc.collect()
        gc.freeze()

    thread = Thread(target=first_need, daemon=True)
    thread.start()
    return thread


def _made(requirement: Requirement, progress: Progress) -> tuple[Advice, AdviceOut]:
    """Return the advice on a requirement, and it as plain data with the smallest changes."""
    known = advise(requirement, catalog(), progress=progress)
    return known, advice_out(known, changed=True)


@st.cache_resource(show_spinner=False)
def _ahead() -> Ahead[tuple[Advice, AdviceOut]]:
    """Return what holds the advice that is worked out before it is asked for."""
    return Ahead()


def drop_ahead(requirement: Requirement | None) -> None:
    """Let go of an advice worked out ahead of anything else than a requirement."""
    if _ahead().drop_but(requirement):
        _let_go.set()


def begin_ahead(requirement: Requirement) -> None:
    """Begin to work out the advice that will be asked for next, while the form is looked at."""
    _ahead().begin(requirement, partial(_made, requirement))


@st.cache_resource(max_entries=_ADVICES, show_spinner=False)
def _both(requirement: Requirement, _progress: Progress = silent) -> tuple[Advice, AdviceOut]:
    """Return an advice with its samples, and as plain data."""
    # In a thread of its own: who leaves the view while it is worked out finds it there later.
    begin_ahead(requirement)
    found = _ahead().take(requirement, _progress) or _made(requirement, _progress)
    _let_go.set()
    return found


def weighed(requirement: Requirement) -> Advice:
    """Return the advice on a requirement with its samples; never changed: sessions share it."""
    return _both(requirement)[0]


def advice(requirement: Requirement, progress: Progress = silent) -> AdviceOut:
    """Return the advice on a requirement as plain data, with the smallest changes.

    Parameters
    ----------
    requirement : Requirement
        What is asked; the key of the cache.
    progress : callable, optional
        Called with a sentence and a fraction while it computes.

    Returns
    -------
    AdviceOut
        All that the views show.
    """
    return _both(requirement, progress)[1]


def tidy() -> None:
    """Give back to the machine what an advice let go of: after the view, not before it."""
    if not _let_go.is_set():
        return
    _let_go.clear()
    gc.collect()
    # Each run of the page has a thread of its own, and each thread a heap that only grows.
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).malloc_trim(0)


@st.cache_resource(max_entries=_ADVICES, show_spinner=False)
def standing(requirement: Requirement) -> Standing:
    """Return what the order of an advice is made from, to be weighed otherwise."""
    known = weighed(requirement)
    return standing_of(known.options, known.asked, known.ranges)


@st.cache_resource(max_entries=_ADVICES, show_spinner=False)
def firmness(requirement: Requirement) -> FirmOut | None:
    """Return how firm an advice is; None where there is nothing to be firm about."""
    return firm(weighed(requirement))


@st.cache_resource(max_entries=_ADVICES, show_spinner="Asking the other methods")
def opinions(requirement: Requirement) -> ComparisonOut | None:
    """Return what methods of other families say; their library is slow to load."""
    return advice_out(weighed(requirement), compare=True).comparison


@st.cache_resource(max_entries=64, show_spinner=False)
def need(requirement: Requirement) -> NeedOut:
    """Return what a part must bear."""
    return need_of(requirement, catalog())


@st.cache_resource(max_entries=64, show_spinner=False)
def able(requirement: Requirement) -> Able:
    """Return what the workshop can do with a part, route by route."""
    return able_of(resolved(requirement, catalog()))


@st.cache_resource(max_entries=_ADVICES, show_spinner=False)
def torched(requirement: Requirement, steel: str | None) -> FlameAnswer:
    """Return whether a torch will do, for one steel or the best, with its samples."""
    known = None if steel else weighed(requirement).job
    return flame_answer(requirement, catalog(), steel, job=known)


@st.cache_resource(max_entries=_ADVICES, show_spinner=False)
def flame(requirement: Requirement, steel: str | None) -> FlameOut:
    """Return whether a torch will do as plain data."""
    return flame_out(torched(requirement, steel))


@st.cache_resource(max_entries=16, show_spinner=False)
def versus(requirement: Requirement, first: str, second: str) -> VersusOut:
    """Return two options set against each other."""
    return versus_of(requirement, first, second, catalog(), weighed(requirement).job)
