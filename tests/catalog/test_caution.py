"""Cautions, sources and families: the shared lists."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.caution import Caution, Family, Source
from selector.option.caution import STEPS

CAUTIONS = load_catalog().cautions


@pytest.mark.parametrize("key", CAUTIONS)
def test_every_caution_belongs_to_a_step_of_the_work(key):
    assert CAUTIONS[key].step in STEPS


@pytest.mark.parametrize("key", CAUTIONS)
def test_every_caution_is_a_sentence(key):
    text = CAUTIONS[key].fact.text
    assert text[0].isupper()
    assert text.endswith(".")


def test_old_cyanide_recipes_are_refused_and_not_repeated():
    text = CAUTIONS["cyanide-refused"].fact.text.casefold()
    assert "sprinkle" not in text
    assert "cyanide" in text


@pytest.mark.parametrize("model", [Caution, Family, Source])
def test_an_empty_entry_is_refused(model):
    with pytest.raises(ValidationError, match=r"\n  Field required .*input_value=\{\}"):
        model.model_validate({})


def test_a_family_may_have_other_names():
    family = Family.model_validate({"name": "Mild steel", "aliases": ["soft"]})
    assert family.aliases == ("soft",)


def test_no_two_families_share_a_name():
    names = [family.name for family in load_catalog().families.values()]
    assert len(set(names)) == len(names)
