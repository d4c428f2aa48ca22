from dataclasses import replace

import pytest
from matplotlib import rc_context

from selector.errors import SelectorError
from selector.flame.plot import WIDE, axial_text, figure, save, section_text
from selector.requirement.part import Section
from tests.once import flamed


@pytest.fixture(scope="module")
def out():
    return flamed().best.outcome


def rows(lines):
    return {int(line[:4]): line[6:] for line in lines if line[:4].strip().isdigit()}


def test_the_axis_shows_the_hard_end_left_of_the_soft_bar(out):
    drawn = rows(axial_text(out))
    top = next(row for hrc, row in sorted(drawn.items(), reverse=True) if row.strip())
    assert top.lstrip().startswith(("*", "@"))
    assert len(top) < WIDE
    assert any(len(row) == WIDE for hrc, row in drawn.items() if hrc <= 25)


def test_the_section_is_the_same_on_both_sides(out):
    for row in rows(section_text(out)).values():
        padded = row.ljust(WIDE)
        assert padded == padded[::-1]


def test_a_bore_is_left_empty(out):
    """No steel is no hardness, and not one of 0 HRC."""
    bored = (replace(out.part.sections[0], bore_mm=12.5), *out.part.sections[1:])
    tube = replace(out, part=replace(out.part, sections=bored))
    drawn = [row.ljust(WIDE) for row in rows(section_text(tube)).values()]
    inside = slice(WIDE // 4 + 1, 3 * WIDE // 4 - 1)
    assert not any(row[inside].strip() for row in drawn)
    assert any(row[0] != " " and row[-1] != " " for row in drawn)


def test_a_flat_is_drawn_as_thick_as_it_is(out):
    """8 by 40 mm stands as a round of 13.3 mm, but goes 4 mm from the axis and no farther."""
    wide = Section(shape="flat", size=8, width=40, length=30)
    shapes = (wide, *out.part.shapes[1:])
    rounds = (replace(out.part.sections[0], outer_mm=13.3), *out.part.sections[1:])
    flat = replace(out, part=replace(out.part, shapes=shapes, sections=rounds))
    assert section_text(flat)[-1].split() == ["-4", "0", "4", "mm", "from", "the", "axis"]
    assert section_text(out)[-1].split()[0] == "-12"


def test_no_map_is_no_lines_and_no_figure(out):
    cold = replace(out, hardness=None)
    assert axial_text(cold) == section_text(cold) == []
    with pytest.raises(SelectorError, match="--plot must be of a part that comes to heat"):
        figure(cold, "cold")


@pytest.mark.parametrize(("name", "start"), [("m.png", b"\x89PNG"), ("m.svg", b"<?xml")])
def test_a_file_is_written(out, tmp_path, name, start):
    save(out, "dog", tmp_path / name)
    assert (tmp_path / name).read_bytes().startswith(start)


@pytest.mark.parametrize("name", ["$5 dog for $6", "$\\frac$"])
def test_a_dollar_sign_in_a_name_is_no_formula(out, tmp_path, name):
    with rc_context({"svg.fonttype": "none"}):
        save(out, name, tmp_path / "map.svg")
    assert f">{name}<" in (tmp_path / "map.svg").read_text(encoding="utf-8")


def test_another_kind_of_file_is_refused(out, tmp_path):
    with pytest.raises(SelectorError, match=r"--plot must be a .png or .svg file.*map.gif"):
        save(out, "dog", tmp_path / "map.gif")


def test_a_folder_that_is_not_there_is_refused(out, tmp_path):
    with pytest.raises(SelectorError, match="--plot must be a file that can be written"):
        save(out, "dog", tmp_path / "none" / "map.png")


def test_the_figure_names_its_axes_with_units(out):
    axes = figure(out, "dog").axes
    assert axes[0].get_ylabel() == "hardness, HRC"
    assert axes[1].get_xlabel().endswith("mm")
