from selector.job.together import at_once, heats, is_trayed
from tests.dog import asked, work

KILN = ("c45", "through-furnace", "oil", "muffle-furnace")


def _part(size_mm, length_mm, **more):
    sizes = {f"part.section.{k}.size": size_mm for k in (0, 1)}
    lengths = {f"part.section.{k}.length": length_mm / 2.0 for k in (0, 1)}
    return asked({**sizes, **lengths, "part.feature": [], **more}).part


def test_small_parts_lie_together_in_the_flame_and_thick_or_long_ones_do_not():
    assert at_once(work(), _part(3.0, 20.0)) > 10
    assert at_once(work(), _part(25.0, 50.0)) == 1
    assert at_once(work(), _part(3.0, 180.0)) == 1
    assert at_once(work(*KILN), _part(3.0, 20.0)) == 1


def test_what_is_heated_at_one_end_never_goes_into_a_tray():
    small = _part(3.0, 20.0)
    for source in ("oxy-propane", "forge"):
        local = work("c45", "local-torch", "oil", source)
        assert not is_trayed(local, small)
    assert at_once(work("c45", "local-torch", "oil", "oxy-propane"), small) == 1
    assert 1 < at_once(work("c45", "local-torch", "oil", "forge"), small) < 10


def test_a_lot_takes_as_many_heats_as_the_flame_holds_parts():
    thin, thick = (_part(size, 30.0, **{"part.quantity": 40}) for size in (3.0, 25.0))
    assert heats(work(), thin) < 5
    assert heats(work(), thick) == 40
