import pytest

from selector.requirement.part_name import ends_edged, itself, module_mm


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Hinge pin for a narrow-gauge wagon", "Hinge pin"),
        ("Gouge from a shock-absorber rod, 12 mm", "Gouge, 12 mm"),
        ("Reamer, 7/8 in to 1 in taper", "Reamer, 7/8 in"),
        ("Finger for a press, spring leaf", "Finger, spring leaf"),
        ("For the plough", "For the plough"),
    ],
)
def test_a_part_is_what_stands_before_what_it_is_for(name, words):
    assert itself(name) == words


def test_the_size_of_teeth_is_read_off_a_name():
    assert module_mm("Change wheel, 20 DP, 40 teeth", 53) == pytest.approx(1.27)
    assert module_mm("Pinion, module 2.5", 60) == 2.5
    assert module_mm("Ratchet, 24 teeth", 52) == 2
    assert module_mm("Oil-pump gear", 32) is None


def test_a_stretch_that_is_called_an_edge_ends_in_one():
    assert ends_edged("cutting edge")
    assert not ends_edged("shank")
