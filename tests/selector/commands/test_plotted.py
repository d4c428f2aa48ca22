"""A plot that cannot be is refused first; one that nobody asks for is not made."""

import pytest
from matplotlib.figure import Figure

from selector.commands.plotted import check_plot, save_plot
from selector.errors import RequirementError


@pytest.mark.parametrize(
    ("name", "start"), [("a.png", b"\x89PNG"), ("a.SVG", b"<?xml"), ("a.pdf", b"%PDF")]
)
def test_it_is_written_as_its_name_ends(tmp_path, name, start):
    path = tmp_path / name
    check_plot(path)
    save_plot(path, Figure)
    assert path.read_bytes().startswith(start)
    assert list(tmp_path.iterdir()) == [path]


def test_a_name_that_is_no_plot_is_refused(tmp_path):
    with pytest.raises(RequirementError, match=r"--plot must be a \.png, .*got '.*map\.gif'"):
        check_plot(tmp_path / "map.gif")


def test_a_place_that_cannot_be_written_is_refused(tmp_path):
    with pytest.raises(
        RequirementError, match="--plot must be a file that can be written; got"
    ):
        save_plot(tmp_path / "nowhere" / "a.png", Figure)


def test_a_plot_is_made_only_where_it_is_asked_for(tmp_path):
    def make():
        made.append(1)
        return Figure()

    made = []
    check_plot(None)
    save_plot(None, make)
    assert made == []
    save_plot(tmp_path / "map.svg", make)
    assert made == [1]
