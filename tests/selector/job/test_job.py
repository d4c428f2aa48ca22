from dataclasses import dataclass, replace

import numpy as np
import pytest

from selector import sampling
from selector.job.job import per_job, per_part, resolved
from selector.requirement.workshop import Stock
from tests.dog import asked, only
from tests.dog import work as dog_work

FEW = only("c45", "42crmo4")


def test_it_holds_part_demands_and_bench(job):
    assert job.mass_kg > 0
    assert len(job.demands) == 2
    assert job.leading.zone == 0
    assert job.hard == (0,)
    assert job.notches.bending.shape == (2,)


def test_a_single_sample_is_the_middle_of_everything():
    once = resolved(asked(), FEW, count=1)
    values = [*once.shared().values(), *once.of_steel("c45").values()]
    assert {float(value[0]) for value in values} == {0.0}
    assert {value.shape for value in values} == {(1,)}


def test_a_steel_sees_its_own_and_the_shared_samples(job):
    answer = job.of_steel("c45")
    assert set(answer) == {*sampling.SHARED, *sampling.STEEL}
    np.testing.assert_array_equal(answer["load"], job.shared()["load"])
    np.testing.assert_array_equal(answer["C"], sampling.of_steel("c45")["C"])


class Counted:
    """Functions of a job that note how often they are worked out, and with how many samples."""

    def __init__(self):
        self.calls = []

        @per_job
        def sampled(job, *what):
            self.calls.append((job.count, what))
            return job.shared()["load"] * len(what)

        @per_part
        def of_part(job, *what):
            self.calls.append((job.count, what))
            return job.shared()["load"].size

        self.sampled, self.of_part = sampled, of_part


def test_work_is_done_once_for_each_argument():
    here, work = resolved(asked(), FEW), Counted()
    for what in ("a", "b", "a"):
        work.sampled(here, what)
    assert work.calls == [(sampling.COUNT, ("a",)), (sampling.COUNT, ("b",))]


def test_functions_of_equal_arguments_do_not_mix():
    here = resolved(asked(), FEW)
    first, second = Counted(), Counted()
    assert first.sampled(here, "a") is not second.sampled(here, "a")
    assert first.of_part(here, "a") == second.of_part(here, "a") == 1


def test_two_jobs_share_no_memory():
    first, second, work = resolved(asked(), FEW), resolved(asked(), FEW), Counted()
    work.sampled(first, "a")
    work.sampled(second, "a")
    assert len(work.calls) == 2


def test_middle_and_samples_are_kept_apart():
    here, work = resolved(asked(), FEW), Counted()
    assert work.sampled(here, "a").size == sampling.COUNT
    assert work.sampled(here.middle(), "a").size == 1
    assert work.sampled(here, "a").size == sampling.COUNT
    assert [count for count, _ in work.calls] == [sampling.COUNT, 1]


@pytest.mark.parametrize("first", ["samples", "middle"])
def test_what_follows_the_part_alone_is_shared_and_sees_no_sample(first):
    here, work = resolved(asked(), FEW), Counted()
    order = (here, here.middle()) if first == "samples" else (here.middle(), here)
    assert [work.of_part(job, "a") for job in order] == [1, 1]
    assert work.calls == [(1, ("a",))]


def test_a_treatment_is_a_key_that_leaves_nothing_out():
    here, work = resolved(asked(), FEW), Counted()
    bar = dog_work("c45")
    for treatment in (
        bar,
        dog_work("c45"),
        dog_work("c45", condition="cold-drawn"),
        dog_work("c45", medium="water"),
        dog_work("c45", source="hand-torch"),
        dog_work("c45", route="local-torch"),
        replace(bar, stock=Stock(steel="C45")),
        replace(bar, steel=bar.steel.model_copy(update={"toughness": "low"})),
    ):
        work.sampled(here, treatment)
    assert len(work.calls) == 7


def test_what_cannot_be_told_apart_is_no_argument():
    here, work = resolved(asked(), FEW), Counted()
    with pytest.raises(TypeError, match="unhashable"):
        work.sampled(here, np.zeros(1))


def test_the_middle_of_the_middle_is_itself():
    middle = resolved(asked(), FEW).middle()
    assert middle.count == 1
    assert middle.middle() is middle


def test_a_job_lets_go_of_its_samples_and_keeps_its_middle():
    here, work = resolved(asked(), FEW), Counted()
    sampled, middle = work.sampled(here, "a"), work.sampled(here.middle(), "a")
    here.forget_samples()
    assert work.sampled(here, "a") is not sampled
    assert work.sampled(here.middle(), "a") is middle


def test_a_job_lets_go_of_what_holds_on_to_it():
    @dataclass
    class Holding:
        job: object

    here, holding = resolved(asked(), FEW), per_job(Holding)
    first = holding(here.middle())
    assert holding(here.middle()) is first
    here.forget_samples()
    assert holding(here.middle()) is not first


def test_the_middle_of_a_job_is_one():
    here = resolved(asked(), FEW)
    assert here.middle() is here.middle() is here.middle().middle()
    assert here.middle().count == 1
