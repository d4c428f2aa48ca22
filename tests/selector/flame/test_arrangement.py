from dataclasses import replace

from catalog import load_catalog
from selector.flame.arrangement import HOLDS_S, arranged, cut_short
from selector.flame.arrangement import _spare as spare
from selector.flame.case import follow
from selector.flame.outcome import Setup
from selector.job.job import resolved
from tests.dog import asked, work

CATALOG = load_catalog()


def job(changes=None):
    return resolved(asked(changes), CATALOG, count=1)


def local(steel="c45", medium="warm-water", source="oxy-propane"):
    return work(steel, "local-torch", medium, source)


def test_a_plain_case_takes_the_shortest_hold_that_bears_to_be_cut_short():
    there = job()
    out = arranged(local(), there, there.leading)
    assert out.failed == ()
    index = HOLDS_S.index(out.setup.hold_s)
    if index:
        shorter = replace(out.setup, hold_s=HOLDS_S[index - 1], temper=None)
        ways = (shorter, cut_short(shorter))
        assert any(follow(local(), there, way, there.leading).failed for way in ways)


def test_of_a_short_hold_and_a_longer_one_the_safer_is_taken():
    """Held for 10 s only, the edge of the zone of a thin part stays soft."""
    thin = {f"part.section.{n}.size": 6 for n in (0, 1)}
    there = job({**thin, "load.torque": "2 N m", "zone.0.depth": "1 mm"})
    out = arranged(local(medium="water"), there, there.leading)
    assert out.failed == ()
    for hold in HOLDS_S[:2]:
        setup = replace(out.setup, hold_s=hold, temper=None)
        other = follow(local(medium="water"), there, setup, there.leading)
        assert spare(other) <= spare(out)


def test_a_deep_demand_takes_a_longer_hold():
    there = job({"zone.0.depth": "9 mm"})
    treatment = local("42crmo4", "oil")
    short = follow(treatment, there, Setup(hold_s=HOLDS_S[0]), there.leading)
    out = arranged(treatment, there, there.leading)
    assert out.setup.hold_s > HOLDS_S[0] or short.depth_mm >= 9.0
    assert out.depth_mm >= 9.0


def test_the_flame_goes_past_the_zone_to_bring_its_edge_to_heat():
    there = job()
    out = arranged(local(), there, there.leading)
    assert out.setup.past_mm > 0.0
    assert out.hard_mm[1] >= 28.0


def test_an_open_flame_is_not_held_for_longer_than_it_can():
    there = job({"zone.0.hardness": {"min": "66 HRC", "must": True}})
    out = arranged(local(), there, there.leading)
    assert out.setup.hold_s <= 60.0 * local().source.soak_max_min.value


def test_a_hold_that_must_not_be_cut_short_is_meant_longer():
    """One hold in ten is half as long as meant; the zone is to be hard all the same."""
    there = job({f"part.section.{n}.size": 16 for n in (0, 1)})
    treatment = local(medium="water")
    out = arranged(treatment, there, there.leading)
    hasty = replace(cut_short(out.setup), temper=out.temper)
    assert not follow(treatment, there, hasty, there.leading).failed
    assert 0.5 * out.setup.hold_s < hasty.hold_s < 0.6 * out.setup.hold_s
