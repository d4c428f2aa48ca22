import numpy as np
import pytest

from catalog import load_catalog
from selector.errors import OutOfRangeError, RequirementError
from selector.hardening.tempered import curve_reach_c
from selector.job.tempers import tempers
from selector.specimen.tempered import (
    temper_at,
    temperature_for,
    tempered,
    temperings,
    thin_piece,
    time_words,
    usual_time_s,
)

CATALOG = load_catalog()
HOUR = 3600.0


def piece(slug):
    return thin_piece(CATALOG, CATALOG.steels[slug])


def test_a_hotter_and_a_longer_temper_is_softer():
    short, long = (tempered(piece("c45"), time_s).rows for time_s in (HOUR, 10 * HOUR))
    middles = [row.hrc.p50 for row in short]
    assert middles == sorted(middles, reverse=True)
    assert all(b.hrc.p50 < a.hrc.p50 for a, b in zip(short, long, strict=True))
    assert [row.temperature_c for row in short[:2]] == [150.0, 175.0]
    assert {row.time_s for row in long} == {10 * HOUR}
    assert all(row.hrc.p05 < row.hrc.p50 < row.hrc.p95 for row in short)


@pytest.mark.parametrize(("slug", "times"), [("c45", 1), ("x153crmov12", 2), ("hs6-5-2", 3)])
def test_where_no_time_is_said_each_temper_takes_an_hour(slug, times):
    of = piece(slug)
    assert usual_time_s(of.treatment) == times * HOUR
    assert tempered(of).rows == tempered(of, times * HOUR).rows


def test_the_hardness_as_quenched_that_is_given_is_taken():
    found = tempered(piece("c45"), HOUR, quenched_hrc=50.0)
    assert (found.quenched_hrc.p05, found.quenched_hrc.p95) == (50.0, 50.0)
    assert found.quench is None
    assert "50 HRC (as given) as quenched" in found.headline
    assert max(row.hrc.p95 for row in found.rows) <= 50.0
    full = tempered(piece("c45"), HOUR)
    assert found.rows[0].hrc.p50 < full.rows[0].hrc.p50


def test_the_same_hour_colours_darker_than_ten_minutes():
    def colour(time_s, slug="c45"):
        rows = tempered(piece(slug), time_s).rows
        return next(row.colour for row in rows if row.temperature_c == 225.0)

    assert (colour(480.0), colour(HOUR)) == ("straw", "purple")
    assert colour(HOUR, "x153crmov12") is None


def test_the_brittle_window_marks_its_rows():
    found = tempered(piece("42crmo4"), HOUR)
    (window,) = found.embrittlement
    assert (window.low_c, window.high_c, window.source) == (260.0, 370.0, "asm-handbook-4")
    for row in found.rows:
        inside = window.low_c <= row.temperature_c <= window.high_c
        assert row.embrittled or not inside
    assert not found.rows[0].embrittled
    assert not found.rows[-1].embrittled


def test_the_temper_for_a_hardness_gives_that_hardness():
    found = tempered(piece("42crmo4"), HOUR, wanted_hrc=45.0)
    heat = found.wanted.temperature_c
    at, middle = zip(*((row.temperature_c, row.hrc.p50) for row in found.rows), strict=True)
    assert np.interp(heat.p50, at, middle) == pytest.approx(45.0, abs=0.1)
    assert heat.p05 < heat.p50 < heat.p95
    low = [row.hrc.p05 for row in found.rows]
    assert np.interp(heat.p05, at, low) == pytest.approx(45.0, abs=0.3)


@pytest.mark.parametrize(
    ("slug", "wanted_hrc", "said"),
    [
        ("c45", 64.0, "64 HRC: never as hard from 150 °C up, 56 HRC at most"),
        ("x153crmov12", 30.0, "30 HRC: still 45 HRC at 650 °C, as hot as is known"),
    ],
)
def test_a_hardness_beyond_the_rows_has_no_temper(slug, wanted_hrc, said):
    wanted = tempered(piece(slug), HOUR, wanted_hrc=wanted_hrc).wanted
    assert wanted.temperature_c is None
    assert wanted.text == said


def test_where_some_bars_never_get_so_hard_the_range_is_open():
    wanted = tempered(piece("hs6-5-2"), 2 * HOUR, wanted_hrc=64.0).wanted
    assert wanted.temperature_c.p05 is None
    assert wanted.temperature_c.p50 > 550.0  # past the peak of secondary hardening
    assert "some bars are softer at any temper" in wanted.text


def test_the_hottest_temper_is_taken_sample_by_sample():
    heats_c = np.array([100.0, 200.0, 300.0])
    hrc = np.array(
        [[60.0, 60.0, 50.0, 40.0], [55.0, 62.0, 58.0, 45.0], [50.0, 58.0, 56.0, 58.0]]
    )
    found = temperature_for(heats_c, hrc, 56.5)
    assert found == pytest.approx([170.0, 300.0, 275.0, 300.0])
    assert temperature_for(heats_c, hrc, 70.0) == pytest.approx([100.0] * 4)


def test_the_tempers_are_those_that_an_option_tries_in_a_furnace():
    work = piece("hs6-5-2").treatment
    tried = [t for t in tempers(work, {"furnace": 700.0}) if t.means == "furnace"]
    grid = temperings(work, 3 * HOUR)
    assert grid == tuple(t for t in tried if t.temperature_c <= curve_reach_c(work.steel))
    assert len(grid) < len(tried)


def test_single_tempers_lie_on_the_curve_of_all():
    of = piece("42crmo4")
    every = {row.temperature_c: row for row in tempered(of, HOUR).rows}
    hot, low, between = tempered(of, HOUR, at_c=(600.0, 100.0, 612.5)).rows
    assert hot == every[600.0]
    assert low.hrc.p50 >= every[150.0].hrc.p50
    assert every[625.0].hrc.p50 < between.hrc.p50 < every[600.0].hrc.p50
    wished = tempered(of, HOUR, wanted_hrc=45.0, at_c=(600.0,)).wanted
    assert wished == tempered(of, HOUR, wanted_hrc=45.0).wanted
    with pytest.raises(OutOfRangeError, match=r"--at must be between 50 and 720 .* got 900"):
        temper_at(of.treatment, 900.0, HOUR)


def test_a_single_temper_may_lie_a_little_past_the_end_of_a_curve_less_surely():
    of = piece("100mncrw4")
    end_c = curve_reach_c(of.steel)
    found = tempered(of, HOUR, at_c=(end_c + 40.0, end_c))
    past, end = (row.hrc for row in found.rows)
    assert past.p50 < end.p50
    assert past.p95 - past.p05 > end.p95 - end.p05
    assert any(f"curve ends at {end_c:g} °C" in said for said in found.assumed)
    assert not any("curve ends" in said for said in tempered(of, HOUR).assumed)
    with pytest.raises(OutOfRangeError, match="--at must be between 50 and 650"):
        temper_at(of.treatment, end_c + 60.0, HOUR)


def test_a_hardening_heat_that_is_given_is_taken():
    steel = CATALOG.steels["x153crmov12"]
    cold = tempered(thin_piece(CATALOG, steel, 980.0), HOUR)
    assert cold.quench.heat.temperature_c == 980.0
    assert cold.quenched_hrc.p50 < tempered(piece("x153crmov12"), HOUR).quenched_hrc.p50


def test_tempers_are_shared_out_as_often_as_the_steel_asks():
    found = tempered(piece("hs6-5-2"), 6 * HOUR)
    assert found.tempers == 3
    assert {row.time_s for row in found.rows} == {6 * HOUR}
    said = " ".join(found.assumed)
    assert "Tempered 3 times" in said
    assert "curve begins at 427 °C" in said
    assert "No table holds for the colours" in said


def test_limits_that_are_left_and_colours_carried_on_are_said():
    found = tempered(piece("c45"), 40 * HOUR)
    assert any("time_s" in left for left in found.origin.validity)
    assert "past 1 h they are carried on" in " ".join(found.assumed)
    assert "its core, not its case" in tempered(piece("16mncr5"), HOUR).headline


def test_what_does_not_harden_is_not_tempered():
    with pytest.raises(RequirementError, match="STEEL must be a steel that a quench hardens"):
        piece("s235")


def test_times_in_words():
    assert [time_words(s) for s in (90.0, 300.0, 5400.0, HOUR)] == [
        "90 s",
        "5 min",
        "1.5 h",
        "1 h",
    ]


@pytest.mark.parametrize(("slug", "size"), [("c75s", 2.5), ("c105u", 6.5), ("100mncrw4", 10.0)])
def test_a_thin_piece_is_no_thicker_than_its_steel_hardens(slug, size):
    thin = piece(slug)
    assert thin.section.size == size
    assert np.quantile(thin.fresh.hrc[:, 0], 0.05) > 60.0
