import numpy as np
import pytest

from catalog import load_catalog
from selector import sampling
from selector.hardening.composition import RESIDUAL_SD_WT_PCT, elements, middle, sampled
from selector.metallurgy.austenite import free_manganese

STEELS = load_catalog().steels
MADE = [slug for slug, steel in STEELS.items() if steel.composition_wt_pct]


def test_every_sample_keeps_to_the_limits_of_the_standard():
    slack, looked_at, beyond = 1e-9, 0, []
    for slug in MADE:
        steel = STEELS[slug]
        found = sampled(steel, sampling.of_steel(slug))
        for element in steel.composition_wt_pct.keys() & found.keys():
            span, values = steel.composition_wt_pct[element], found[element]
            most = np.inf if span.max is None else span.max
            least = 0.0 if span.min is None else span.min
            if element == "Mn":  # some is bound by sulphur
                sulphur = steel.composition_wt_pct.get("S")
                least = free_manganese(least, sulphur.high if sulphur else 0.0)
            looked_at += 1
            if values.max() > most + slack or values.min() < least - slack:
                beyond.append((slug, element, values.min(), values.max()))
    assert looked_at > 2 * len(MADE)
    assert beyond == []


@pytest.mark.parametrize("slug", ["1144", "1137", "11smn30"])
def test_manganese_that_sulphur_binds_does_not_count(slug):
    held = STEELS[slug].composition_wt_pct
    free = float(middle(STEELS[slug])["Mn"][0, 0])
    bound = 1.71 * (held["S"].middle - 0.03)
    assert free == pytest.approx(held["Mn"].middle - bound)
    found = sampled(STEELS[slug], sampling.of_steel(slug))
    assert np.median(found["Mn"]) == pytest.approx(free, rel=0.02)


def test_shapes_are_draws_by_one():
    steel = STEELS["c45"]
    assert {value.shape for value in middle(steel).values()} == {(1, 1)}
    found = sampled(steel, sampling.of_steel("c45", 64))
    # Elements without a dimension of their own stay at their middle and broadcast.
    assert {value.shape for value in found.values()} <= {(64, 1), (1, 1)}
    assert found["C"].shape == (64, 1)


def test_the_middle_is_the_median_of_the_draws():
    steel = STEELS["42crmo4"]
    centre, found = middle(steel), sampled(steel, sampling.of_steel("42crmo4"))
    for element in ("C", "Mn", "Cr", "Mo"):
        assert np.median(found[element]) == pytest.approx(
            float(centre[element][0, 0]), rel=0.02
        )


def test_residual_elements_are_there_though_no_standard_names_them():
    steel = STEELS["c45"]
    assert set(RESIDUAL_SD_WT_PCT) <= set(elements(steel))
    found = sampled(steel, sampling.of_steel("c45"))
    for element in RESIDUAL_SD_WT_PCT:
        assert (found[element] >= 0).all()
        assert found[element].mean() > 0


def test_what_does_not_count_for_hardening_is_left_out():
    assert not {"P", "S", "N", "Pb"} & set(elements(STEELS["11smnpb30"]))
