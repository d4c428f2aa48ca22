from selector.job.together import at_once, heats
from tests.dog import asked, work

KILN = ("c45", "through-furnace", "oil", "muffle-furnace")


def test_small_parts_lie_together_in_the_flame_and_thick_ones_do_not():
    sizes = {n: asked({f"part.section.{k}.size": n for k in (0, 1)}).part for n in (3.0, 25.0)}
    assert at_once(work(), sizes[3.0]) > 10
    assert at_once(work(), sizes[25.0]) == 1
    assert at_once(work(*KILN), sizes[3.0]) == 1


def test_a_lot_takes_as_many_heats_as_the_flame_holds_parts():
    thin, thick = (
        asked({"part.quantity": 40, **{f"part.section.{k}.size": n for k in (0, 1)}}).part
        for n in (3.0, 25.0)
    )
    assert heats(work(), thin) < 5
    assert heats(work(), thick) == 40
