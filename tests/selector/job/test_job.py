import numpy as np

from selector import sampling
from selector.job.job import surroundings
from tests.dog import asked, only

FEW = only("c45", "42crmo4")


def test_it_holds_part_demands_and_bench(around):
    assert around.mass_kg > 0
    assert len(around.demands) == 2
    assert around.leading.zone == 0
    assert around.hard == (0,)
    assert around.notches.bending.shape == (2,)


def test_a_single_draw_is_the_middle_of_everything():
    once = surroundings(asked(), FEW, count=1)
    values = [*once.shared().values(), *once.of_steel("c45").values()]
    assert {float(value[0]) for value in values} == {0.0}
    assert {value.shape for value in values} == {(1,)}


def test_a_steel_sees_its_own_and_the_shared_draws(around):
    found = around.of_steel("c45")
    assert set(found) == {*sampling.SHARED, *sampling.STEEL}
    np.testing.assert_array_equal(found["load"], around.shared()["load"])
    np.testing.assert_array_equal(found["C"], sampling.of_steel("c45")["C"])


def test_shared_work_is_done_once_for_each_key():
    here, calls = surroundings(asked(), FEW), []
    for key in ("a", "b", "a"):
        here.once((key,), lambda key=key: calls.append(key))
    assert calls == ["a", "b"]


def test_two_parts_share_no_memory():
    first, second = surroundings(asked(), FEW), surroundings(asked(), FEW)
    assert first.once(("x",), lambda: 1) == 1
    assert second.once(("x",), lambda: 2) == 2


def test_the_middle_keeps_the_histories_of_the_part_and_nothing_drawn():
    here = surroundings(asked(), FEW)
    here.once(("x",), lambda: "drawn")
    here.course(("x",), lambda: "history")
    middle = here.middle()
    assert middle.count == 1
    assert middle.once(("x",), lambda: "middle") == "middle"
    assert middle.course(("x",), lambda: "again") == "history"
    assert here.once(("x",), lambda: "again") == "drawn"
