from catalog import load_catalog
from selector.decision.standard import standard_of
from selector.job.job import resolved
from tests.dog import asked

CATALOG = load_catalog()


def standard(changes=None):
    return standard_of(resolved(asked(changes), CATALOG))


def test_the_zones_beside_the_leading_one_are_the_others():
    yardstick = standard()
    assert yardstick.lead.zone == 0
    assert [demand.zone for demand in yardstick.others] == [1]


def test_only_a_force_on_the_leading_zone_presses():
    assert standard().pressing is None
    assert standard({"load.contact": "5 kN"}).pressing.zone == 0


def test_a_fire_tempers_one_zone_further_as_a_torch_does():
    sources = {"oxy-propane": True, "charcoal-forge": True, "muffle-furnace": False}
    for source, flame in sources.items():
        assert standard({"workshop.heat": [{"source": source}]}).has_flame is flame


def test_one_job_has_one_standard():
    job = resolved(asked(), CATALOG)
    assert standard_of(job) is standard_of(job)
