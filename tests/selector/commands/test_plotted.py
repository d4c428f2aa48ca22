"""A plot that cannot be is refused first; one that nobody asks for is not drawn."""

import pytest
from matplotlib.figure import Figure

from selector.commands.plotted import check_plot, save_plot
from selector.errors import RequirementError


def test_a_name_that_is_no_plot_is_refused(tmp_path):
    check_plot(None)
    check_plot(tmp_path / "map.svg")
    with pytest.raises(RequirementError, match=r"--plot must be a \.png, .*got '.*map\.gif'"):
        check_plot(tmp_path / "map.gif")


def test_a_plot_is_drawn_only_where_it_is_asked_for(tmp_path):
    def made():
        drawn.append(1)
        return Figure()

    drawn = []
    save_plot(None, made)
    assert drawn == []
    save_plot(tmp_path / "map.svg", made)
    assert drawn == [1]
    assert (tmp_path / "map.svg").read_text().startswith("<?xml")
