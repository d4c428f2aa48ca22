from dataclasses import replace

from catalog import load_catalog
from selector.procedure.bar import proved, skimmed
from selector.requirement.workshop import Stock
from tests.procedure import doing

STEELS = load_catalog().steels


def test_the_evidence_says_how_the_bar_is_proved():
    bought = proved(doing("42crmo4", "local-torch", "oil"))
    assert bought.action.startswith("Buy 4140 (42CrMo4), annealed, Ø27 or over")
    assert "coupon" in bought.otherwise


def test_black_bar_is_skimmed_where_it_hardens_and_bright_is_not():
    (black,) = skimmed(doing("42crmo4", "local-torch", "oil"))
    assert black.length_mm == 1
    assert "over the zone" in black.action
    assert skimmed(doing("c45", "local-torch", "water", None, "cold-drawn")) == []
    assert skimmed(doing("c45", "as-bought", None, None, "hot-rolled")) == []


def test_a_bar_is_skimmed_with_a_machine_that_is_there():
    by = [
        skimmed(doing("42crmo4", "local-torch", "oil", {"workshop.machine": machines}))[0].means
        for machines in (["centre lathe"], ["drill press"], [])
    ]
    assert by == ["centre lathe", "grinder, file", "grinder, file"]


def test_a_bar_of_the_rack_is_named_by_its_own_size():
    do = doing("42crmo4", "local-torch", "oil")
    said = []
    for size in (20.0, 25.0, 40.0, None):
        bar = Stock(steel="42CrMo4", size=size, evidence="receipt")
        work = replace(do.work, stock=bar)
        said.append(proved(replace(do, prediction=replace(do.prediction, treatment=work))))
    assert said[0].action.endswith("or over: the 20 mm bar of the rack is too small")
    # Black bar as thick as the part loses its skin where it is hard, thicker bar everywhere.
    assert said[1].action.endswith("the 25 mm bar, its skin off where it is hard and no more")
    assert said[2].action.endswith("the 40 mm bar")
    assert said[3].action.endswith("or over")
    assert said[0].means == "receipt, grinding wheel"
