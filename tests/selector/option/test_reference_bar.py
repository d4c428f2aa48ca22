from selector.job.job import resolved
from selector.option.reference_bar import reference_bar, reference_cost
from tests.dog import asked, only


def test_it_is_prehardened_bar_left_as_bought():
    bar = reference_bar(only("42crmo4"))
    assert (bar.steel.slug, bar.condition.name) == ("42crmo4", "prehard")
    assert bar.route.process == "none"


def test_without_that_bar_an_hour_of_labour_is_the_measure():
    few = only("c45")
    assert reference_bar(few) is None
    assert reference_cost(resolved(asked(), few)) == few.prices.labour_per_h


def test_a_longer_part_costs_more():
    few = only("42crmo4")
    cost = [
        reference_cost(resolved(asked({"part.section.1.length": length}), few))
        for length in (60, 600)
    ]
    assert cost[1] > cost[0]
