import numpy as np

from selector import sampling
from selector.job.job import resolved
from tests.dog import asked, only

FEW = only("c45", "42crmo4")


def test_it_holds_part_demands_and_bench(job):
    assert job.mass_kg > 0
    assert len(job.demands) == 2
    assert job.leading.zone == 0
    assert job.hard == (0,)
    assert job.notches.bending.shape == (2,)


def test_a_single_draw_is_the_middle_of_everything():
    once = resolved(asked(), FEW, count=1)
    values = [*once.shared().values(), *once.of_steel("c45").values()]
    assert {float(value[0]) for value in values} == {0.0}
    assert {value.shape for value in values} == {(1,)}


def test_a_steel_sees_its_own_and_the_shared_draws(job):
    found = job.of_steel("c45")
    assert set(found) == {*sampling.SHARED, *sampling.STEEL}
    np.testing.assert_array_equal(found["load"], job.shared()["load"])
    np.testing.assert_array_equal(found["C"], sampling.of_steel("c45")["C"])


def test_shared_work_is_done_once_for_each_key():
    here, calls = resolved(asked(), FEW), []
    for key in ("a", "b", "a"):
        here.once((key,), lambda key=key: calls.append(key))
    assert calls == ["a", "b"]


def test_two_parts_share_no_memory():
    first, second = resolved(asked(), FEW), resolved(asked(), FEW)
    assert first.once(("x",), lambda: 1) == 1
    assert second.once(("x",), lambda: 2) == 2


def test_the_middle_keeps_the_histories_of_the_part_and_nothing_drawn():
    here = resolved(asked(), FEW)
    here.once(("x",), lambda: "drawn")
    here.course(("x",), lambda: "history")
    middle = here.middle()
    assert middle.count == 1
    assert middle.once(("x",), lambda: "middle") == "middle"
    assert middle.course(("x",), lambda: "again") == "history"
    assert here.once(("x",), lambda: "again") == "drawn"
