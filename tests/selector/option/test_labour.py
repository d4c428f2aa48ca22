from selector.option.labour import at_once, labour_h
from tests.dog import asked, work

KILN = ("c45", "through-furnace", "oil", "muffle-furnace")


def test_small_parts_lie_together_in_the_flame_and_thick_ones_do_not():
    sizes = {n: asked({f"part.section.{k}.size": n for k in (0, 1)}).part for n in (3.0, 25.0)}
    assert at_once(work(), sizes[3.0]) > 10
    assert at_once(work(), sizes[25.0]) == 1
    assert at_once(work(*KILN), sizes[3.0]) == 1


def test_the_work_on_each_falls_with_their_number():
    one, many = (asked({"part.quantity": n}).part for n in (1, 40))
    for way in (work(), work(*KILN)):
        assert labour_h(way, one) == way.route.labour_h.value
        assert labour_h(way, many) < labour_h(way, one)
    loaded, torched = (
        labour_h(way, many) / labour_h(way, one) for way in (work(*KILN), work())
    )
    assert loaded < torched
