import re
from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.judgement import judge
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.prediction import predict
from selector.option.preparation import prepare
from selector.requirement.priority import CRITERIA
from tests.dog import asked, work

CATALOG = load_catalog()
TESTER = {"workshop.check": ["tester"]}


def oven(temperature_c):
    return Temper("oven", float(temperature_c), 3600.0)


def case(changes=None, treatment=None, temper=None):
    """Return an option predicted for the dog, changed, and its job."""
    job = resolved(asked(changes), CATALOG)
    treatment = treatment or work("42crmo4")
    return predict(prepare(treatment, job), temper or oven(200)), job


def gates(changes=None, treatment=None, temper=None):
    answer, job = case(changes, treatment, temper)
    return {gate.name: gate for gate in judge(answer, 1.0, job).gates}


def test_a_tool_for_checking_changes_no_physics():
    """What is judged is the temper that is printed, whatever reads it."""
    window = {"zone.0.hardness": {"min": "48 HRC", "max": "51 HRC"}}
    shares = {
        check: gates({**window, "workshop.check": [check]})["not_too_hard"].share
        for check in ("file", "tester")
    }
    assert shares["file"] == shares["tester"]


def test_a_value_for_each_criterion_and_place_in_the_sample():
    answer, job = case()
    judged = judge(answer, 3.0, job)
    assert judged.values.shape == (job.count, len(CRITERIA))
    assert np.isfinite(judged.values).all()
    assert (judged.values[:, CRITERIA.index("operator_sensitivity")] == 3.0).all()
    assert (judged.values[:, CRITERIA.index("hardness")] >= 0).all()


@pytest.mark.parametrize("steel", ["c45", "42crmo4", "115crv3"])
def test_passing_all_is_never_more_than_passing_one(steel):
    answer, job = case(treatment=work(steel))
    judged = judge(answer, 0.0, job)
    zone_2 = {gate.text for gate in judged.gates if gate.text.startswith("zone")}
    # The heat is a means: what it spoils counts where it shows, in hardness and depth.
    shares = [
        g.share
        for g in judged.gates
        if g.share is not None and g.text not in zone_2 and g.name not in {"heating", "budget"}
    ]
    assert judged.passing_all <= min(shares) + 1e-9


def test_coming_out_right_and_staying_inside_the_budget_are_told_apart():
    answer, job = case({"limit.budget": None}, work("42crmo4"))
    free = judge(answer, 0.0, job)
    assert free.within_budget is None
    assert (free.passing == free.right).all()
    middle = float(np.median(answer.bill.cost))
    answer, job = case({"limit.budget": middle}, work("42crmo4"))
    tight = judge(answer, 0.0, job)
    assert tight.passing_all == free.passing_all
    assert 0.4 < tight.within_budget < 0.6
    budget = next(gate for gate in tight.gates if gate.name == "budget")
    assert budget.share == tight.within_budget
    assert tight.passing.mean() < tight.passing_all


@pytest.mark.parametrize(
    ("share", "verdict"), [(0.95, "pass"), (0.35, "marginal"), (0.1, "fail")]
)
def test_what_may_well_stay_inside_the_budget_is_shown(share, verdict):
    answer, _ = case({"limit.budget": None}, work("42crmo4"))
    allowed = float(np.quantile(answer.bill.cost, share))
    answer, job = case({"limit.budget": allowed}, work("42crmo4"))
    found = {gate.name: gate for gate in judge(answer, 0.0, job).gates}
    assert found["budget"].verdict == verdict


def test_too_soft_is_judged_by_the_floor_and_too_hard_by_the_ceiling():
    soft = gates(treatment=work("c45", "as-bought", None, None), temper=NO_TEMPER)
    assert soft["hard_enough"].verdict == "fail"
    assert soft["not_too_hard"].verdict == "pass"
    hard = gates({"zone.0.hardness": {"max": "40 HRC"}}, temper=oven(150))
    assert hard["not_too_hard"].verdict == "fail"
    assert "hard_enough" not in hard


def test_a_window_that_must_be_kept_is_judged_at_its_edges():
    window = {"min": "50 HRC", "max": "56 HRC"}
    free = gates({"zone.0.hardness": window})["not_too_hard"]
    kept = gates({"zone.0.hardness": {**window, "must": True}})["not_too_hard"]
    assert kept.share < free.share


@pytest.mark.parametrize(("protect", "said"), [([], True), (["foil"], False)])
def test_what_a_bare_soak_costs_is_said_with_its_remedy(protect, said):
    shop = {"workshop.heat": [{"source": "muffle-furnace"}], "workshop.protect": protect}
    treatment = work("42crmo4", "through-furnace", "oil", "muffle-furnace")
    text = gates(shop, treatment)["hard_enough"].text
    assert ("lost to the bare heat: wrap it in foil" in text) == said


def test_a_layer_says_how_long_it_is_grown():
    shop = {"workshop.heat": [{"source": "kiln"}], "zone.0.depth": 0.5}
    text = gates(shop, work("16mncr5", "pack-carburise", "oil", "kiln"))["depth"].text
    assert text.startswith("needs 0.5 mm deep; predicted 0.")
    assert " h at 925 °C" in text


def test_movement_is_a_gate_only_where_a_limit_is_stated():
    assert "movement" not in gates()
    assert gates({"limit.runout": "0.01 mm"})["movement"].verdict == "fail"
    assert gates({"limit.runout": "5 mm"})["movement"].verdict == "pass"


def test_strength_is_a_gate_only_where_there_is_a_load():
    assert gates()["strength"].verdict == "pass"
    assert gates({"load.torque": "5000 N m"})["strength"].verdict == "fail"
    assert "strength" not in gates({"load.torque": None})


def test_service_heat_must_stay_below_the_temper():
    assert gates({"limit.service_temperature": 190})["service_heat"].verdict == "fail"
    assert gates({"limit.service_temperature": 100})["service_heat"].verdict == "pass"


@pytest.mark.parametrize(
    ("steel", "verdict"),
    [("c45", "fail"), ("x5crni18-10", "marginal"), ("x5crnimo17-12-2", "pass")],
)
def test_severe_corrosion_wants_a_resistant_steel(steel, verdict):
    plain = work(steel, "as-bought", None, None)
    answer = gates({"limit.corrosion": "severe"}, plain, NO_TEMPER)
    assert answer["corrosion"].verdict == verdict


def test_a_budget_in_another_currency_keeps_its_own_and_is_said_to_be_taken_as_it_stands():
    limited = {"limit.budget": 60, "limit.currency": "GBP"}
    text = gates(limited)["budget"].text
    assert re.fullmatch(
        r"costs about \d+ EUR; you allow 60 GBP, compared as it stands", text
    ), text
    assert "of the 60 EUR you allow" in gates({"limit.budget": 60})["budget"].text


def test_budget_and_days_are_gates_where_given():
    assert not {"budget", "days"} & set(gates())
    tight = gates({"limit.budget": 1, "limit.days": 0.1})
    assert tight["budget"].verdict == tight["days"].verdict == "fail"
    wide = gates({"limit.budget": 100_000, "limit.days": 100})
    assert wide["budget"].verdict == wide["days"].verdict == "pass"


def test_a_section_beyond_the_torch_is_narrow():
    small = {"part.section.0.size": 16, "part.section.1.size": 16}
    assert "heating" not in gates(small)
    middling = {"part.section.0.size": 32, "part.section.1.size": 32}
    assert gates(middling)["heating"].verdict == "marginal"
    big = {"part.section.0.size": 40, "part.section.1.size": 40}
    assert gates(big)["heating"].verdict == "fail"


def test_a_zone_beside_the_leading_one_is_judged_by_its_own_window():
    soft_shank = {"zone.1.hardness": {"max": "35 HRC"}}
    answer, job = case(soft_shank, work("42crmo4"))
    texts = [gate.text for gate in judge(answer, 0.0, job).gates if "zone 2" in gate.text]
    (text,) = texts
    assert "must not pass 38 HRC" in text
    # A torch can temper it further on its own; without one the whole quench is out.
    assert "temper it further by torch" in text
    furnace = {**soft_shank, "workshop.heat": [{"source": "muffle-furnace"}]}
    whole = work("42crmo4", "through-furnace", "oil", "muffle-furnace")
    answer, job = case(furnace, whole)
    verdicts = {g.verdict for g in judge(answer, 0.0, job).gates if "zone 2" in g.text}
    assert verdicts == {"fail"}


def test_what_cracks_does_not_pass():
    answer, job = case(treatment=work("115crv3", medium="warm-water"))
    count = job.count
    cracked = replace(answer, crack=replace(answer.crack, cracked=np.ones(count, dtype=bool)))
    assert judge(cracked, 0.0, job).passing_all == 0
    assert judge(cracked, 0.0, job).verdict == "fail"


def values(criterion, changes=None, treatment=None):
    answer, job = case(changes, treatment)
    return judge(answer, 1.0, job).values[:, CRITERIA.index(criterion)]


def test_a_wanted_life_is_what_the_first_criterion_counts():
    bar = work("42crmo4")
    window = values("hardness", {}, bar)
    once, twice = (values("hardness", {"zone.0.life_ratio": r}, bar) for r in (1.0, 2.0))
    assert np.median(once) > 1 > np.median(twice)
    np.testing.assert_allclose(once, 2 * twice)
    assert not np.allclose(once, window)


def test_a_heavy_contact_lowers_the_strength_in_hand():
    light, heavy = (values("strength", {"load.contact": f"{f} kN"}) for f in (1, 60))
    assert np.median(heavy) < np.median(light)


def test_the_chance_of_failing_grows_with_the_load_and_is_unknown_where_toughness_is():
    light, heavy = (_failing({"load.torque": f"{t} N m"}) for t in (100, 2500))
    assert 0 <= light < heavy <= 1
    assert np.isnan(_failing({}, temper=NO_TEMPER))


def _failing(changes, temper=None):
    answer, job = case(changes, temper=temper)
    return judge(answer, 1.0, job).failing_all


def test_what_a_bench_can_mend_is_marginal_and_refuses_nothing():
    mended = {"load.impact_energy": "2 kJ", "part.section.1.size": 22}
    answer = gates(mended, work("c45", "local-torch"))
    assert answer["blow"].verdict == answer["hard_end"].verdict == "marginal"


def test_nobody_is_sent_to_plate_what_no_bath_is_good_for():
    damp = {"limit.corrosion": "mild"}
    hard = gates(damp)["corrosion"].text
    soft = gates(damp, work("c45", "as-bought", None, None), NO_TEMPER)["corrosion"].text
    assert "waxed" in hard
    assert "plated" not in hard
    assert "blacked or plated" in soft
