from selector.option.labour import labour_h
from tests.dog import asked, work

KILN = ("c45", "through-furnace", "oil", "muffle-furnace")


def test_the_work_on_each_falls_with_their_number():
    one, many = (asked({"part.quantity": n}).part for n in (1, 40))
    for way in (work(), work(*KILN)):
        assert labour_h(way, one) == way.route.labour_h.value
        assert labour_h(way, many) < labour_h(way, one)
    loaded, torched = (
        labour_h(way, many) / labour_h(way, one) for way in (work(*KILN), work())
    )
    assert loaded < torched
