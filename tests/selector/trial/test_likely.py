import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.trial.likely import chance, guesses, likely_words, then
from tests.dog import asked

CATALOG = load_catalog()
BAR = {"workshop.stock": [{"steel": "old leaf spring", "size": "30 mm"}]}


@pytest.fixture(scope="module")
def job():
    return resolved(asked(BAR), CATALOG)


def found(job, slug="old-axle", bath="oil"):
    return guesses(job, CATALOG.steels[slug], CATALOG.media[bath])


def test_the_shares_make_up_a_whole_and_the_chance_lies_between_its_steels(job):
    every = found(job)
    assert sum(guess.share for guess in every) == pytest.approx(1.0)
    low, high = min(g.skates for g in every), max(g.skates for g in every)
    assert low <= chance(every) <= high


def test_a_file_that_skates_speaks_for_the_steel_that_hardens(job):
    every = found(job)
    before = {guess.steel.slug: guess.share for guess in every}
    hardest = max(every, key=lambda guess: guess.skates)
    after = {steel.slug: share for steel, share in then(every, skates=True)}
    assert after[hardest.steel.slug] > before[hardest.steel.slug]
    assert sum(after.values()) == pytest.approx(1.0)


def test_the_rack_is_told_what_its_bar_may_be(job):
    (said,) = likely_words(job)
    assert said.startswith("Old leaf spring is likely 5160 (40)")
    assert "times in 100" in said
    assert likely_words(resolved(asked(), CATALOG)) == ()
