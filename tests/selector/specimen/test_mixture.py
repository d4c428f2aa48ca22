import pytest

from catalog import load_catalog
from selector.requirement import argument
from selector.specimen.mixture import likely_rows, mixture, mixture_words

CATALOG = load_catalog()


def of(slug, bath="oil", text="flat 8 x 60 mm"):
    section = argument.section("--section", text)
    return mixture(CATALOG, CATALOG.steels[slug], section, CATALOG.media[bath])


def test_a_spring_is_a_mixture_of_spring_steels():
    found = of("old-leaf-spring")
    assert [guess.share for guess in found] == sorted((g.share for g in found), reverse=True)
    assert sum(guess.share for guess in found) == pytest.approx(1.0)
    assert all(guess.skin_hrc.p50 > 50.0 for guess in found)
    assert "times in 100" in mixture_words(CATALOG.steels["old-leaf-spring"], found)


def test_what_does_not_harden_has_no_skin_and_no_chance():
    soft = next(guess for guess in of("old-file", "water") if guess.slug == "c15")
    assert soft.skin_hrc is None
    assert soft.skates_share == 0.0
    assert ("C15", "20 in 100", "not hardened") in likely_rows(of("old-file"))


def test_a_steel_that_is_known_is_no_mixture():
    assert of("c45") == ()
