import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.job.geometry import (
    area_mm2,
    as_cooled,
    cut_share,
    mass_kg,
    notch_factor,
    notches,
    section_ratio,
)
from selector.requirement.part import Feature, Part, Section

SIZE, PART = st.floats(0.1, 500), st.floats(0.1, 0.9)


def section(shape="round", size=20.0, length=50.0, **more):
    return Section(shape=shape, size=size, length=length, **more)


def part(*sections, **more):
    return Part(name="x", section=sections, **more)


def test_areas_by_school_geometry():
    assert area_mm2(section("round", 2)) == pytest.approx(math.pi)
    assert area_mm2(section("square", 2)) == pytest.approx(4)
    # Across flats s a hexagon has sqrt(3)/2 s².
    assert area_mm2(section("hexagon", 2)) == pytest.approx(math.sqrt(3) / 2 * 4, rel=1e-4)
    assert area_mm2(section("flat", 2, width=5)) == pytest.approx(10)
    assert area_mm2(section("tube", 4, bore=2)) == pytest.approx(math.pi * 3)


@given(SIZE, PART)
def test_a_bore_takes_its_own_area_away(size, share):
    solid, bored = section(size=size), section("tube", size, bore=share * size)
    lost = math.pi / 4 * (share * size) ** 2
    assert area_mm2(solid) - area_mm2(bored) == pytest.approx(lost)


@given(SIZE, SIZE, SIZE)
def test_mass_adds_up_along_the_part(size, first, second):
    whole = mass_kg(part(section(size=size, length=first + second)))
    halves = mass_kg(part(section(size=size, length=first), section(size=size, length=second)))
    assert whole == pytest.approx(halves)


def test_mass_of_a_litre_of_steel():
    assert mass_kg(part(section("square", 100, 100))) == pytest.approx(7.85)


def test_a_plain_bar_has_no_notch():
    answer = notches(part(section(), section()))
    assert (answer.torsion == 1).all()
    assert (answer.bending == 1).all()


def test_a_shoulder_notches_the_thin_side_and_a_fillet_eases_it():
    sharp = notches(part(section(size=30), section(size=20)))
    eased = notches(part(section(size=30, fillet=3), section(size=20)))
    for kind in ("torsion", "bending"):
        assert getattr(sharp, kind)[0] == 1
        assert getattr(sharp, kind)[1] > getattr(eased, kind)[1] > 1


@pytest.mark.parametrize(
    "kind", ["cross-hole", "keyway", "thread", "sharp-corner", "slot", "groove", "teeth"]
)
def test_a_feature_notches_the_section_it_lies_on(kind):
    at_end = notches(part(section(), section(), feature=[{"kind": kind, "at": 60}]))
    assert at_end.bending[0] == 1
    assert at_end.bending[1] > 1
    assert at_end.torsion[1] > 1


@pytest.mark.parametrize(("at", "place"), [(0, 0), (None, 0), (50, 0), (51, 1), (100, 1)])
def test_where_a_feature_lies(at, place):
    answer = notches(part(section(), section(), feature=[{"kind": "thread", "at": at}]))
    assert int(np.argmax(answer.bending)) == place


@pytest.mark.parametrize(("kind", "presumed"), [("cross-hole", 3), ("slot", 3), ("keyway", 5)])
def test_a_cut_takes_steel_and_an_unknown_size_is_presumed(kind, presumed):
    bar = part(section())
    answer = [cut_share(bar, Feature(kind=kind, size=s)) for s in (None, presumed, 10)]
    assert answer[0] == answer[1]
    assert answer[2].torsion < answer[1].torsion < 1
    assert answer[2].axial < answer[1].axial < 1


def test_a_thread_takes_nothing_but_a_cut_does_from_its_own_section():
    whole = notches(part(section(), section(), feature=[{"kind": "thread", "at": 60}]))
    holed = notches(
        part(section(), section(), feature=[{"kind": "cross-hole", "at": 60, "size": 9}])
    )
    for name in ("net_torsion", "net_bending", "net_axial"):
        assert (getattr(whole, name) == 1).all()
        assert getattr(holed, name)[0] == 1
        assert getattr(holed, name)[1] < 1


@pytest.mark.parametrize("kind", ["cross-hole", "slot", "keyway"])
@given(st.floats(0.5, 19.5))
def test_a_notch_on_the_whole_section_holds_the_steel_it_lost(kind, size):
    """What yields at the edge of a hole comes before what yields throughout."""
    bar, feature = part(section()), Feature(kind=kind, size=size)
    left = cut_share(bar, feature)
    factor = notch_factor(bar, feature)
    assert 1 / factor.torsion <= left.torsion * 4 / 3 + 1e-9
    assert 1 / factor.bending <= left.bending * 1.7 + 1e-9


def test_ratio_of_neighbours_does_not_care_for_the_direction():
    row = (section(size=10), section(size=30), section(size=20))
    assert section_ratio(part(*row)) == section_ratio(part(*reversed(row))) == 3
    assert section_ratio(part(section())) == 1


def test_a_foot_on_a_thin_stem_heats_and_cools_as_a_plate():
    foot = Section(shape="round", size=22, length=6)

    def like(stem_mm, foot=foot):
        stem = Section(shape="round", size=stem_mm, length=30)
        return as_cooled(Part(name="Tappet", section=(foot, stem)))[0]

    assert (like(11).shape, like(11).size, like(11).width) == ("flat", 6, 22)
    # A stem that covers its face, or a foot as long as thick, leaves it a round.
    assert like(16) == foot
    long = foot.model_copy(update={"length": 22.0})
    assert like(11, long) == long
