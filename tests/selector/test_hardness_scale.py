import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.hardness_scale import (
    hb_from_hv,
    hrc_from_hb,
    hrc_from_hv,
    hv_from_hb,
    hv_from_hrc,
    hv_from_tensile_mpa,
    tensile_mpa_from_hv,
)

SCALES = ["ASTM E140", "ISO 18265"]


@pytest.mark.parametrize("scale", SCALES)
@given(hrc=st.floats(20.3, 68.0))
def test_rockwell_round_trip(scale, hrc):
    assert hrc_from_hv(hv_from_hrc(hrc, scale), scale) == pytest.approx(hrc, abs=1e-9)


@pytest.mark.parametrize("scale", SCALES)
@given(hb=st.floats(226.0, 618.0))
def test_brinell_round_trip(scale, hb):
    assert hb_from_hv(hv_from_hb(hb, scale), scale) == pytest.approx(hb, abs=1e-9)


@given(hb=st.floats(226.0, 615.0))
def test_brinell_to_rockwell_goes_by_way_of_vickers(hb):
    by_vickers = hrc_from_hv(hv_from_hb(hb, "ASTM E140"))
    assert hrc_from_hb(hb) == pytest.approx(by_vickers, abs=1e-9)


def test_soft_brinell_stays_a_number_for_arithmetic():
    hrc = hrc_from_hb(np.array([100.0, 152.0, 187.0, 226.0]), outside="extend")
    assert (np.diff(hrc) > 0.0).all()
    np.testing.assert_allclose(hrc[1:], [0.0, 10.0, 20.0])


@given(tensile_mpa=st.floats(255.0, 2180.0))
def test_tensile_round_trip(tensile_mpa):
    back = tensile_mpa_from_hv(hv_from_tensile_mpa(tensile_mpa))
    assert back == pytest.approx(tensile_mpa, abs=1e-9)


@given(hrc=st.floats(-20.0, 75.0))
def test_extended_round_trip(hrc):
    hv = hv_from_hrc(hrc, outside="extend")
    assert hrc_from_hv(hv, outside="extend") == pytest.approx(hrc, abs=1e-9)


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("convert", [hrc_from_hv, hb_from_hv])
def test_harder_on_one_scale_is_harder_on_the_other(convert, scale):
    values = convert(np.linspace(50.0, 1000.0, 2000), scale, outside="nan")
    assert (np.diff(values[~np.isnan(values)]) > 0.0).all()


def test_the_two_tables_agree_within_their_own_warning():
    hrc = np.arange(21.0, 68.0)
    assert np.abs(hrc_from_hv(hv_from_hrc(hrc), "ISO 18265") - hrc).max() < 2.0


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: hv_from_hrc(12.0), r"hrc must be between 20 and 68 HRC .*E140.*got 12 HRC"),
        (lambda: hrc_from_hv([300.0, 200.0]), r"hv must be between 238 and 940 HV.*got 200 HV"),
        (
            lambda: hb_from_hv(700.0),
            r"hv must be between 80 and 650 HV .*ISO 18265.*got 700 HV",
        ),
        (lambda: hv_from_hb(700.0), r"hb must be between 76 and 618 HB .*got 700 HB"),
        (lambda: tensile_mpa_from_hv(655.0), r"hv must be between 80 and 650 HV .*got 655 HV"),
        (lambda: hv_from_tensile_mpa(200.0), r"tensile_mpa must be between 255 .*got 200 MPa"),
    ],
)
def test_outside_the_table_is_refused_with_its_limit(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()


def test_outside_the_table_is_nan_on_request():
    hrc = hrc_from_hv([[200.0, 513.0, 1000.0]], outside="nan")
    np.testing.assert_array_equal(hrc, [[np.nan, 50.0, np.nan]])


def test_not_a_number_stays_so():
    assert np.isnan(hv_from_hrc(np.nan))
