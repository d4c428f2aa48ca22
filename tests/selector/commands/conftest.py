"""A catalogue that is quick to ask, for commands whose answer is not the point."""

import pytest

from catalog import load_catalog
from tests.dog import EVERY_KIND, only
from tests.once import advise_once, changes_once


@pytest.fixture
def few_steels(monkeypatch):
    """Let commands know a few steels of every kind, and advise once on each question."""
    known = only(*EVERY_KIND)
    monkeypatch.setattr(
        "selector.commands.filter.load_catalog",
        lambda *folders: load_catalog(*folders) if folders else known,
    )
    for asker in ("selector.advice.advise", "selector.handover.letter.answer"):
        monkeypatch.setattr(f"{asker}.advise", advise_once)
    monkeypatch.setattr("selector.advice.output.changes", changes_once)
