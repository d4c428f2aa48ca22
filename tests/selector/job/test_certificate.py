import numpy as np
import pytest

from catalog import load_catalog
from selector import sampling
from selector.advice.advise import advise
from selector.errors import RequirementError
from selector.hardening.composition import sampled
from selector.hardening.stock import bought_hrc
from selector.hardness_scale import hrc_from_hv
from selector.job.certificate import certified, deviation_wt_pct, measured, not_of
from selector.job.supply import racked
from selector.requirement.workshop import Analysis, Stock
from tests.dog import asked, only

STEELS = load_catalog().steels
HELD = {"C": 0.42, "Mn": 0.75, "Cr": 1.1, "Mo": 0.21, "Cu": 0.15}


def bar(**more):
    return Stock.model_validate({"steel": "42CrMo4", **more})


def spread(steel, element):
    found = sampled(steel, sampling.of_steel(steel.slug))[element]
    return float(np.mean(found)), float(np.ptp(found))


@pytest.mark.parametrize("element", HELD)
def test_the_sample_keeps_to_the_analysis_within_its_own_error(element):
    own = certified(STEELS["42crmo4"], bar(analysis=HELD))
    mean, width = spread(own, element)
    off = deviation_wt_pct(element, HELD[element])
    assert mean == pytest.approx(HELD[element], abs=0.05 * off)
    assert width <= 2 * off + 1e-9
    assert width < spread(STEELS["42crmo4"], element)[1]


def test_what_the_analysis_leaves_out_stays_as_the_standard_has_it():
    own = certified(STEELS["42crmo4"], bar(analysis={"C": 0.40}))
    assert spread(own, "Mn") == spread(STEELS["42crmo4"], "Mn")
    assert certified(STEELS["42crmo4"], bar()) is STEELS["42crmo4"]


def test_a_rich_steel_deviates_by_its_share():
    assert deviation_wt_pct("Cr", 12.0) == pytest.approx(0.15)
    assert deviation_wt_pct("C", 0.4) == 0.02


def test_a_measured_hardness_is_that_of_the_bar():
    condition = STEELS["42crmo4"].condition[0]
    hard = bar(hardness="30 HRC")
    assert bought_hrc(measured(condition, hard)) == pytest.approx(30.0, abs=0.1)
    assert measured(condition, bar()) is condition


@pytest.mark.parametrize(("hardness", "hard"), [("210 HB", False), ("31 HRC", True)])
def test_a_measured_hardness_says_in_which_condition_a_bar_is(hardness, hard):
    held = racked(bar(hardness=hardness), STEELS["42crmo4"], load_catalog())
    taken = [condition.name for condition in held.conditions]
    assert taken
    assert ("prehard" in taken) == hard


def test_an_analysis_of_another_steel_is_refused_by_field_and_figure():
    wrong = bar(analysis={"C": 4.2 / 2, "Mn": 0.7})
    problems = not_of(2, wrong, STEELS["42crmo4"])
    assert [p.field for p in problems] == ["workshop.stock.2.analysis.C"]
    assert not_of(1, bar(analysis=HELD), STEELS["42crmo4"]) == []
    # A little outside is a bar a little outside.
    assert not_of(1, bar(analysis={"C": 0.47}), STEELS["42crmo4"]) == []
    stock = [{"steel": "42CrMo4", "analysis": {"C": 0.95}}]
    with pytest.raises(RequirementError, match=r"workshop.stock.1.analysis.C .* 0.95"):
        advise(asked({"workshop.stock": stock}), only("42crmo4"))


@pytest.mark.parametrize(
    ("analysis", "field"),
    [({"C": 4.2}, "analysis.C"), ({"Xy": 1}, "analysis.Xy"), ({"Mn": "much"}, "analysis.Mn")],
)
def test_an_analysis_that_is_none_is_refused_by_field(analysis, field):
    with pytest.raises(RequirementError, match=field):
        asked({"workshop.stock": [{"steel": "42CrMo4", "analysis": analysis}]})


def test_an_analysis_names_what_it_holds():
    assert Analysis(C=0.42, Mn=0.7).held_wt_pct() == {"C": 0.42, "Mn": 0.7}


def best(analysis):
    stock = [{"steel": "42CrMo4", "condition": "annealed", **analysis}]
    shop = {"workshop.stock": stock, "workshop.only_stock": True}
    advice = advise(asked(shop), only("42crmo4"), route="local-torch")
    return advice.options[0].judged.prediction.surface_hrc


def test_more_carbon_on_the_certificate_comes_out_harder():
    lean, rich = (best({"analysis": {**HELD, "C": carbon}}) for carbon in (0.38, 0.45))
    assert np.median(rich) > np.median(lean) + 1.0


def test_a_bar_of_middling_analysis_spreads_less_than_one_nobody_knows():
    limits = STEELS["42crmo4"].composition_wt_pct
    middling = {name: limits[name].middle for name in ("C", "Si", "Mn", "Cr", "Mo")}
    assert np.std(best({"analysis": middling})) < np.std(best({}))


def test_the_hardness_scale_of_the_field_is_any():
    assert float(hrc_from_hv(bar(hardness="30 HRC").hardness)) == pytest.approx(30.0)
