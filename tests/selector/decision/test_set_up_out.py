import pytest

from catalog import load_catalog
from selector.decision.set_up_out import set_up_out
from selector.job.job import resolved
from selector.option.set_up import alike
from selector.option.torched import torched
from tests.dog import asked, work

CATALOG = load_catalog()


def shown(treatment, changes=None):
    return set_up_out(resolved(asked(changes), CATALOG), treatment)


def test_of_a_torch_it_is_the_set_up_that_was_forecast():
    job, treatment = resolved(asked(), CATALOG), work("42crmo4", "local-torch")
    out, meant = set_up_out(job, treatment), torched(job.middle(), alike(treatment))
    assert out.heat_c == meant.set_up.heat_c
    assert out.hold_s == meant.set_up.hold_s
    assert out.past_zone_mm == pytest.approx(meant.set_up.past_mm, abs=0.05)
    assert out.gas_l > 0.0
    assert 0.0 < out.flame_share <= 1.0
    assert 0.0 <= out.even_s <= out.hold_s


def test_a_long_part_takes_its_time_to_come_to_one_colour():
    lengths = {"part.section.0.length": 80.0}
    short, long = (
        shown(work("115crv3", "local-torch"), changes) for changes in (None, lengths)
    )
    assert short.even_s <= long.even_s


def test_a_furnace_leaves_the_flame_open_and_reads_for_itself():
    out = shown(work("42crmo4", "through-furnace", "oil", "muffle-furnace"))
    assert out.read_by == "furnace"
    assert (out.colour, out.gas_l, out.past_zone_mm, out.flame_share) == (None,) * 4
    assert out.hold_s > 60.0


def test_nothing_quenched_has_no_set_up():
    assert shown(work("42crmo4", "as-bought", None, None)) is None


def test_in_the_sun_a_heat_looks_duller_and_is_read_worse():
    dim, sun = (
        shown(work("42crmo4", "local-torch"), {"workshop.light": light})
        for light in ("dim", "sun")
    )
    assert dim.looks_duller_c == 0.0 < sun.looks_duller_c
    assert dim.misread_c < sun.misread_c


@pytest.mark.parametrize(
    ("route", "length", "words"),
    [
        ("local-torch", 150, "hot end first"),
        ("through-torch", 150, "upright"),
        ("through-torch", 20, "edge first"),
    ],
)
def test_the_way_in_goes_by_what_is_hot_and_how_slender_it_is(route, length, words):
    out = shown(work("42crmo4", route), {"part.section.1.length": length})
    assert out.way_in.startswith(words)
