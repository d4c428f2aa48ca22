import pytest
from matplotlib import rc_context

from selector.commands.plotted import save_plot
from selector.versus.plot import plot_of
from selector.versus.versus import versus
from tests.dog import asked, only


@pytest.fixture(scope="module")
def found():
    return versus(
        asked({"workshop.subcontract": True}),
        "c45/cold-drawn/through-torch.oil/oven-200c-60min",
        "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min",
        only("c45", "42crmo4"),
    )


def test_the_plot_shows_both_costs_and_the_swap(found):
    (axes,) = plot_of(found).axes
    labels = [text.get_text() for text in axes.get_legend().get_texts()]
    assert labels == [found.first.id, found.second.id]
    assert list(axes.lines[0].get_ydata()) == [cost.p50 for cost in found.first_cost]
    assert axes.get_xlabel() == "quantity, pieces"
    assert "EUR, prices invented" in axes.get_ylabel()
    (mark,) = [text.get_text() for text in axes.texts]
    assert mark.strip().startswith("swap at ")


@pytest.mark.parametrize("name", ["$5 dog for $6", "$\\frac$", "a_$b^$c", "100 $"])
def test_a_dollar_sign_in_a_name_is_no_formula(tmp_path, name, found):
    first = found.first.model_copy(update={"id": name})
    path = tmp_path / "cost.svg"
    given = {"part": name, "currency": name, "first": first}
    with rc_context({"svg.fonttype": "none"}):
        save_plot(path, lambda: plot_of(found.model_copy(update=given)))
    assert path.read_text(encoding="utf-8").count(f"{name}<") >= 2
