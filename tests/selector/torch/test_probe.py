from selector.torch.probe import probes
from tests.tasks import task

POSITIONS = (0.98, 0.85, 0.65, 0.4, 0.0)


def test_probes_are_the_zone_its_ends_the_shanks_and_the_ring():
    part = task().part
    seen = probes(part, POSITIONS)
    assert seen.hard == (0,)
    assert seen.soft == (1,)
    assert seen.ends == 2
    assert seen.in_zone == len(POSITIONS) + 2
    assert seen.rims == [0, len(POSITIONS), len(POSITIONS) + 1]
    assert len(seen.weight) > seen.before_ring
    assert abs(seen.weight.sum(axis=1) - 1.0).max() < 1e-9


def test_a_part_heated_whole_is_looked_at_at_both_ends_and_has_no_ring():
    whole = task(changes={"zone.0.section": [1, 2]}).part
    seen = probes(whole, POSITIONS)
    assert seen.ends == 2
    assert seen.soft == ()
    assert len(seen.weight) == seen.before_ring
