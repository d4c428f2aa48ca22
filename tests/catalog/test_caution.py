"""Cautions, sources and families: the shared lists."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.caution import Caution, Family, Source
from selector.option.caution import STEPS

CAUTIONS = load_catalog().cautions


def test_every_caution_belongs_to_a_step_of_the_work():
    assert {k: c.step for k, c in CAUTIONS.items() if c.step not in STEPS} == {}


def is_sentence(text):
    return text[0].isupper() and text.endswith(".")


def test_every_caution_is_a_sentence():
    assert [k for k, c in CAUTIONS.items() if not is_sentence(c.fact.text)] == []


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


def test_every_caution_has_a_line_of_its_own_for_the_first_screen():
    briefs = {k: c.brief for k, c in CAUTIONS.items()}
    assert {k: b for k, b in briefs.items() if not is_sentence(b) or len(b) > 105} == {}


def test_no_two_cautions_share_their_line():
    briefs = [caution.brief for caution in CAUTIONS.values()]
    assert len(set(briefs)) == len(briefs)


def test_harms_stand_together_the_worst_first():
    """Within a harm the order of the file is the rank."""
    harms = [caution.harm for caution in CAUTIONS.values()]
    assert harms == sorted(harms, key=("kills", "injures", "spoils").index)


def test_each_sort_of_oil_is_put_out_by_its_own_means():
    """Cooking oil is class F (US K): foam and carbon dioxide can throw it."""
    mineral = CAUTIONS["fire-extinguisher"].fact.text
    cooking = CAUTIONS["vegetable-oil-fire"].fact.text
    assert "mineral" in mineral
    assert "foam, dry powder or carbon dioxide" in mineral
    assert "class F" in cooking
    assert "Foam and carbon dioxide can throw the oil" in cooking


def test_acetylene_is_taken_by_the_tenth_and_nitrate_kept_under_its_trade_limit():
    """CGA G-1 has reduced one seventh to one tenth; salts work up to 538 °C."""
    assert "a tenth" in CAUTIONS["acetylene"].fact.text
    assert "540 °C" in CAUTIONS["nitrate-salt"].brief
    assert "sand" in CAUTIONS["nitrate-salt"].fact.text


def test_hydrogen_is_baked_out_below_the_temper_and_vinegar_counts_as_acid():
    text = CAUTIONS["hydrogen-embrittlement"].fact.text
    assert "within 4 h" in text
    assert "vinegar" in text
    assert "below its temper" in text


def test_the_usual_hardening_powder_is_called_what_it_is():
    """Most hold potassium or sodium ferrocyanide, which leaves cyanide at red heat."""
    text = CAUTIONS["ferrocyanide"].fact.text
    assert "ferrocyanide" in text
    assert "no acid reaches" in text
    assert "ferrocyanide" in load_catalog().routes["case-compound"].cautions
