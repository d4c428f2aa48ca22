import pytest
from matplotlib import rc_context

from catalog import load_catalog
from selector.plot_file import save
from selector.versus.plot import plot_of
from selector.versus.versus import versus
from tests.dog import asked

FOUND = versus(
    asked({"workshop.subcontract": True}),
    "c45/cold-drawn/through-torch.oil/oven-200c-60min",
    "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min",
    load_catalog(),
)


def test_the_plot_shows_both_costs_and_the_swap():
    (axes,) = plot_of(FOUND).axes
    labels = [text.get_text() for text in axes.get_legend().get_texts()]
    assert labels == [FOUND.first.id, FOUND.second.id]
    assert list(axes.lines[0].get_ydata()) == [cost.p50 for cost in FOUND.first_cost]
    assert axes.get_xlabel() == "quantity, pieces"
    assert "EUR, prices invented" in axes.get_ylabel()
    (mark,) = [text.get_text() for text in axes.texts]
    assert mark.strip().startswith("swap at ")


@pytest.mark.parametrize("name", ["$5 dog for $6", "$\\frac$", "a_$b^$c", "100 $"])
def test_a_dollar_sign_in_a_name_is_no_formula(tmp_path, name):
    first = FOUND.first.model_copy(update={"id": name})
    path = tmp_path / "cost.svg"
    given = {"part": name, "currency": name, "first": first}
    with rc_context({"svg.fonttype": "none"}):
        save(plot_of(FOUND.model_copy(update=given)), path)
    assert path.read_text(encoding="utf-8").count(f"{name}<") >= 2
