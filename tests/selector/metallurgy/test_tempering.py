import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.hardness_scale import hv_from_hrc
from selector.metallurgy.published_curve import tempered_from_curve
from selector.metallurgy.temper_curve import MOST_WT_PCT
from selector.metallurgy.tempering import (
    Structure,
    equivalent_time,
    prior_temper,
    temperature_for,
    tempered_hardness,
)
from tests.catalogued import catalogued_hrc

HOUR_S = 3600.0
CR_MO = {"C": 0.40, "Mn": 0.85, "Si": 0.25, "Cr": 1.0, "Mo": 0.20}
PLAIN = {"C": 0.45, "Mn": 0.70, "Si": 0.25}
SILVER = {"C": 1.1, "Mn": 0.35, "Si": 0.25, "Cr": 0.4}
# Shape of a high-speed steel's curve, from memory; the checks rest on the shape only.
CURVE_C = np.array([20.0, 200.0, 400.0, 520.0, 560.0, 600.0, 650.0])
CURVE_HRC = np.array([65.0, 62.0, 61.0, 64.0, 64.0, 61.0, 53.0])

temperatures = st.floats(20.0, 720.0)
times = st.floats(1.0, 2e5)
steels = st.sampled_from([CR_MO, PLAIN, SILVER])


def test_ten_seconds_at_400_c_is_not_an_hour():
    short, hour = tempered_hardness(PLAIN, 400.0, [10.0, HOUR_S]).hrc
    assert short > hour + 4.0


@given(steels, temperatures, times, st.floats(0.0, 100.0), st.floats(1.0, 100.0))
def test_hotter_or_longer_is_never_harder(steel, temperature_c, time_s, hotter_k, longer):
    base = tempered_hardness(steel, temperature_c, time_s).hrc
    assert tempered_hardness(steel, temperature_c + hotter_k, time_s).hrc <= base + 1e-9
    assert tempered_hardness(steel, temperature_c, time_s * longer).hrc <= base + 1e-9


@given(
    steels, temperatures, times, st.floats(25.0, 67.0), st.floats(0.0, 0.9), st.floats(0.0, 0.1)
)
def test_tempering_never_hardens(
    steel, temperature_c, time_s, as_quenched_hrc, share, retained
):
    structure = Structure(martensite_fraction=share, retained_austenite_fraction=retained)
    known = tempered_hardness(steel, temperature_c, time_s, as_quenched_hrc, structure)
    assert known.hrc <= as_quenched_hrc + 1e-9
    alone = tempered_hardness(steel, temperature_c, time_s, as_quenched_hrc)
    assert alone.hrc <= as_quenched_hrc + 1e-9


@pytest.mark.parametrize("as_quenched_hrc", [45.0, 56.0, 60.0])
def test_no_temper_leaves_the_as_quenched_hardness(as_quenched_hrc):
    assert tempered_hardness(CR_MO, 20.0, HOUR_S, as_quenched_hrc).hrc == pytest.approx(
        as_quenched_hrc
    )


def test_without_as_quenched_hardness_the_start_is_that_of_full_martensite():
    # Hodge and Orehoski 1946, 99.9 % martensite, from memory; their scatter is about 2 HRC.
    for carbon, hrc in ((0.30, 50.3), (0.40, 56.1), (0.50, 60.9), (0.60, 64.3)):
        assert tempered_hardness({"C": carbon, "Mn": 0.75}, 20.0, 1.0).hrc == pytest.approx(
            hrc, abs=2.0
        )


def test_unknown_as_quenched_hardness_is_that_of_the_composition():
    known = tempered_hardness(CR_MO, 400.0, HOUR_S, np.array([np.nan, 50.0]))
    unknown = tempered_hardness(CR_MO, 400.0, HOUR_S)
    assert known.hrc[0] == pytest.approx(unknown.hrc) != known.hrc[1]
    assert known.sd_hrc[0] == unknown.sd_hrc


def test_a_softer_quench_stays_softer():
    hard, slack = tempered_hardness(CR_MO, 550.0, HOUR_S, np.array([56.0, 48.0])).hrc
    assert slack < hard


def test_prehard_shank_is_not_softened_by_a_300_c_temper():
    prior = prior_temper(CR_MO, hv_from_hrc(30.0))
    bar = Structure(prior_temper=prior)
    assert tempered_hardness(CR_MO, 300.0, HOUR_S, structure=bar).hrc == pytest.approx(
        30.0, abs=0.01
    )
    assert tempered_hardness(CR_MO, 700.0, HOUR_S, structure=bar).hrc < 27.0


@given(steels, st.floats(200.0, 650.0))
def test_prior_temper_gives_the_supply_hardness_back(steel, temperature_c):
    once = tempered_hardness(steel, temperature_c, HOUR_S)
    bar = Structure(prior_temper=prior_temper(steel, once.hv))
    assert tempered_hardness(steel, 20.0, 1.0, structure=bar).hv == pytest.approx(
        once.hv, abs=0.5
    )


def test_mixed_structure_softens_less_than_martensite_and_more_than_its_rest():
    mixed = Structure(martensite_fraction=0.5, other_hv=300.0)
    temper_c = np.array([20.0, 450.0])
    half = tempered_hardness(CR_MO, temper_c, HOUR_S, structure=mixed).hv
    full = tempered_hardness(CR_MO, temper_c, HOUR_S).hv
    assert 0.0 < half[0] - half[1] < full[0] - full[1]
    assert half == pytest.approx(0.5 * full + 150.0)


def test_rest_follows_martensite_once_that_is_softer():
    mixed = Structure(martensite_fraction=0.5, other_hv=300.0)
    late = tempered_hardness(PLAIN, 650.0, HOUR_S, structure=mixed).hv
    assert late == pytest.approx(tempered_hardness(PLAIN, 650.0, HOUR_S).hv)


def test_rest_is_what_the_as_quenched_hardness_leaves():
    fresh = tempered_hardness(CR_MO, 20.0, 1.0).hv
    whole_hrc = 45.0
    rest_hv = float(hv_from_hrc(whole_hrc) - 0.6 * fresh) / 0.4
    inferred = Structure(martensite_fraction=0.6)
    given_rest = Structure(martensite_fraction=0.6, other_hv=rest_hv)
    left, right = (
        tempered_hardness(CR_MO, 400.0, HOUR_S, whole_hrc, structure).hv
        for structure in (inferred, given_rest)
    )
    assert left == pytest.approx(right)


def test_mixed_structure_without_any_hardness_of_its_rest_is_refused():
    with pytest.raises(
        OutOfRangeError, match=r"other_hv must be given .*got nothing beside 0.6"
    ):
        tempered_hardness(CR_MO, 400.0, HOUR_S, structure=Structure(martensite_fraction=0.6))


def test_retained_austenite_gives_its_softness_up_above_200_c():
    soft = Structure(martensite_fraction=0.85, retained_austenite_fraction=0.15)
    temper_c = np.array([150.0, 320.0])
    gap = tempered_hardness(SILVER, temper_c, HOUR_S).hv - (
        tempered_hardness(SILVER, temper_c, HOUR_S, structure=soft).hv
    )
    assert gap[0] > 50.0
    assert gap[1] == pytest.approx(0.0, abs=1e-6)


def test_axes_broadcast_samples_by_points():
    steel = {"C": np.linspace(0.38, 0.43, 5)[:, None], "Mn": 0.8, "Cr": np.full((5, 1), 1.0)}
    result = tempered_hardness(
        steel, np.array([200.0, 400.0, 600.0]), HOUR_S, np.full((5, 1), 55)
    )
    assert result.hrc.shape == result.hv.shape == (5, 3)
    one = tempered_hardness({"C": 0.43, "Mn": 0.8, "Cr": 1.0}, 400.0, HOUR_S, 55.0)
    assert result.hrc[-1, 1] == pytest.approx(one.hrc)


@pytest.mark.parametrize(
    ("inside", "outside"),
    [
        ((CR_MO, 400.0, HOUR_S), ({**CR_MO, "Cr": 5.0, "Mo": 1.0}, 400.0, HOUR_S)),
        ((PLAIN, 400.0, HOUR_S), (SILVER, 400.0, HOUR_S)),
        ((CR_MO, 400.0, 60.0), (CR_MO, 400.0, 2.0)),
        ((CR_MO, 400.0, HOUR_S), (CR_MO, 780.0, HOUR_S)),
    ],
    ids=["alloy", "carbon", "time", "temperature"],
)
def test_error_is_wider_outside_what_was_fitted(inside, outside):
    assert tempered_hardness(*outside).sd_hrc > 1.02 * tempered_hardness(*inside).sd_hrc


def test_known_as_quenched_hardness_narrows_nothing():
    # No laboratory that gives it is predicted closer than one that does not.
    known = tempered_hardness(CR_MO, 400.0, HOUR_S, 55.0)
    assert known.sd_hrc == tempered_hardness(CR_MO, 400.0, HOUR_S).sd_hrc


def test_laboratories_differ_in_nothing_at_first_and_most_in_long_tempers():
    fresh, hour, day = tempered_hardness(
        CR_MO, [20.0, 400.0, 400.0], [60.0, HOUR_S, 24 * HOUR_S]
    ).sd_laboratory_hrc
    assert fresh == 0.0 < hour < day


@given(temperatures, times)
def test_the_error_is_that_of_steel_and_laboratory(temperature_c, time_s):
    found = tempered_hardness(CR_MO, temperature_c, time_s)
    parts = found.sd_steel_hrc**2 + found.sd_laboratory_hrc**2
    assert found.sd_hrc**2 == pytest.approx(parts)


@given(st.floats(100.0, 650.0), st.floats(1.0, 1e5))
def test_constant_history_is_its_own_time(temperature_c, time_s):
    instants = np.linspace(0.0, time_s, 7)
    same = equivalent_time(np.full(7, temperature_c), instants, temperature_c)
    assert same == pytest.approx(time_s, rel=1e-6)


def test_equivalent_time_tempers_alike_at_any_reference():
    instants = np.linspace(0.0, 60.0, 121)
    flash_c = 20.0 + 450.0 * np.exp(-(((instants - 20.0) / 8.0) ** 2))
    reference_c = np.array([300.0, 400.0, 500.0])
    times_s = equivalent_time(flash_c, instants, reference_c)
    hardness = tempered_hardness(CR_MO, reference_c, times_s).hrc
    assert hardness == pytest.approx(hardness[0], abs=1e-6)
    assert hardness[0] < tempered_hardness(CR_MO, 20.0, 60.0).hrc - 2.0


def test_history_does_not_depend_on_how_finely_it_is_said():
    def flash(count):
        instants = np.linspace(0.0, 60.0, count)
        return equivalent_time(
            20.0 + 380.0 * np.exp(-(((instants - 20.0) / 8.0) ** 2)), instants, 400.0
        )

    assert flash(201) == pytest.approx(flash(2001), rel=0.02)
    assert 1.0 < flash(201) < 16.0


def test_history_counts_alike_for_every_steel():
    instants, history = np.array([0.0, 5.0, 65.0]), np.array([20.0, 350.0, 420.0])
    alone = equivalent_time(history, instants, 400.0)
    assert equivalent_time(history, instants, 400.0, CR_MO) == alone
    assert equivalent_time(history, instants, 400.0, composition_wt_pct=SILVER) == alone


def test_histories_of_many_points_share_the_instants():
    history = np.array([[20.0, 300.0, 300.0], [20.0, 400.0, 400.0]])
    times_s = equivalent_time(history, np.array([0.0, 5.0, 605.0]), 400.0)
    assert times_s.shape == (2,)
    assert times_s[0] < 5.0 < 600.0 <= times_s[1] < 610.0


@given(steels, st.floats(200.0, 680.0), st.floats(60.0, 1e5))
def test_temperature_for_is_the_inverse(steel, temperature_c, time_s):
    target = tempered_hardness(steel, temperature_c, time_s).hrc
    back = temperature_for(steel, time_s, target)
    assert tempered_hardness(steel, back, time_s).hrc == pytest.approx(target, abs=1e-6)


def test_temperature_for_is_unknown_out_of_reach():
    assert np.isnan(temperature_for(CR_MO, HOUR_S, np.array([66.0, -30.0]))).all()


def test_secondary_hardening_steel_is_harder_at_520_than_at_400_c():
    low, high = tempered_from_curve(CURVE_C, CURVE_HRC, HOUR_S, [400.0, 520.0], HOUR_S)
    assert high > low + 2.0


@pytest.mark.parametrize("slug", ["hs6-5-2", "x40crmov5-1"])
def test_catalogued_steels_that_harden_again_are_harder_at_520_than_at_400_c(slug):
    assert catalogued_hrc(slug, 520.0, 2) > catalogued_hrc(slug, 400.0, 2) + 0.5


@pytest.mark.parametrize("slug", ["100mncrw4", "c105u", "l6"])
def test_catalogued_steels_that_do_not_are_softer_at_400_than_at_250_c(slug):
    assert catalogued_hrc(slug, 400.0, 2) < catalogued_hrc(slug, 250.0, 2) - 5.0


def test_curve_moves_with_time():
    once = tempered_from_curve(CURVE_C, CURVE_HRC, HOUR_S, 600.0, [HOUR_S, 4.0 * HOUR_S])
    assert once[0] == pytest.approx(61.0)
    assert once[1] < 60.0
    early = tempered_from_curve(CURVE_C, CURVE_HRC, HOUR_S, 480.0, [HOUR_S, 4.0 * HOUR_S])
    assert early[1] > early[0]


def test_curve_ends_flat_below_and_falls_on_beyond():
    values = tempered_from_curve(
        CURVE_C[1:], CURVE_HRC[1:], HOUR_S, [100.0, 650.0, 660.0, 690.0, 725.0, 800.0], HOUR_S
    )
    assert values[0] == CURVE_HRC[1]
    assert values[2] == pytest.approx(values[1] - 1.6)
    assert values[3] == pytest.approx(values[1] - 6.4)
    assert values[4] == values[5]


@pytest.mark.parametrize("element", ["Cr", "Mo", "V", "Si"])
def test_an_element_beyond_the_fit_counts_as_at_its_end_and_is_less_sure(element):
    most = MOST_WT_PCT[element]
    end, past = (
        tempered_hardness({**CR_MO, element: most + more}, 550.0, HOUR_S) for more in (0.0, 1.0)
    )
    assert past.hrc == pytest.approx(end.hrc)
    assert past.sd_hrc > end.sd_hrc
