import pytest

from selector.option.caution import BY_CONDITION, BY_MEANS, BY_SHAPE, STEPS, cautions

NAMED = {
    key
    for table in (BY_CONDITION, BY_MEANS, BY_SHAPE)
    for keys in table.values()
    for key in keys
}


@pytest.mark.parametrize("key", sorted(NAMED))
def test_every_id_named_here_is_on_the_one_list(catalog, key):
    assert key in catalog.cautions


def test_every_step_of_the_list_has_its_place(catalog):
    assert {caution.step for caution in catalog.cautions.values()} <= set(STEPS)


def test_one_on_the_list_is_a_sentence_with_a_source(catalog):
    for key, caution in catalog.cautions.items():
        assert caution.fact.text[-1] in ".!)", key
        assert caution.fact.source in catalog.sources


def test_a_part_without_an_option_brings_its_own(job):
    assert [key for key, _ in cautions(job, [])] == ["local-codes"]
