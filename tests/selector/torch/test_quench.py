import numpy as np
import pytest

from catalog import load_catalog
from selector.job.geometry import POSITIONS
from selector.job.job import resolved
from selector.job.process import quench
from selector.torch.heating import HOLDS_S, MIDDLE, STOPS_C, Torching, heated
from selector.torch.part import flame_of, operator, stretch
from selector.torch.quench import DESIGN, quenched, terms
from tests.dog import asked

CATALOG = load_catalog()
JOB = resolved(asked(), CATALOG)


def task(size=25):
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    job = resolved(asked(sizes), CATALOG)
    part, shop = stretch(job.asked, job.hard), job.asked.workshop
    torch = CATALOG.heat_sources["oxy-propane"]
    hand = operator(torch, shop, STOPS_C[-1], 0.0)
    return Torching(part, flame_of(torch, shop), hand, "low-alloy", 0)


def cooling(medium="oil", size=25):
    torching = task(size)
    bath = quench(CATALOG.media[medium], JOB.asked.workshop, 0.5)
    return quenched(torching, heated(torching), bath, bath.bath)


def at(stop_c=830.0, hold_s=20.0, bath=0.0, delay=0.0):
    return np.array([[stop_c, np.log(hold_s), bath, delay]])


@pytest.mark.parametrize("medium", ["oil", "water"])
def test_the_rim_cools_before_the_core_and_a_keen_bath_sooner(medium):
    found = cooling(medium)
    middle = found.log_time(at())[0, : len(POSITIONS)]
    assert (np.diff(middle) > 0.0).all()
    assert (found.log_time(at(bath=1.0)) < found.log_time(at())).all()


@pytest.mark.parametrize("medium", ["oil", "water"])
def test_the_response_misses_less_than_the_equivalence_is_out(medium):
    assert (cooling(medium).log_sd < 0.1).all()


def test_a_thicker_part_takes_longer():
    thin, thick = (cooling(size=size).log_time(at())[0, 4] for size in (16, 32))
    assert thick > thin + 0.5


def test_the_design_can_tell_its_terms_apart():
    runs = np.array([(STOPS_C[s], np.log(HOLDS_S[h]), b, d) for s, h, b, d in DESIGN])
    basis = terms(runs)
    assert np.linalg.matrix_rank(basis) == basis.shape[1]
    assert DESIGN[0] == (MIDDLE[1], MIDDLE[2], 0.0, 0.0)
