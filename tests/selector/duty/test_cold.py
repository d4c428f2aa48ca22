import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog import load_catalog
from selector.decision.judgement import judge
from selector.duty.cold import cold_gate, transition
from selector.gate import Gate
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import asked, work

CATALOG = load_catalog()
BOUGHT = {"route": "as-bought", "medium": None, "source": None}


def gate(service, impact="light", hrc=20.0, **given_work) -> Gate | None:
    changes = {"limit.service_temperature": service, "load.impact": impact}
    return cold_gate(work(**{**BOUGHT, **given_work}), hrc, asked(changes))


def prehard(service, impact="light"):
    return gate(
        service, impact, 30.0, steel="42crmo4", condition="prehard", route="prehard-bar"
    )


def test_without_frost_the_cold_is_not_judged():
    assert cold_gate(work(**BOUGHT), 20.0, asked()) is None
    assert gate(0) is None
    assert gate(60) is None


@pytest.mark.parametrize(
    ("service", "impact", "verdict"),
    [
        (-10, "hammered", "pass"),
        (-40, "hammered", "marginal"),
        (-78, "hammered", "fail"),
        (-78, "light", "marginal"),
    ],
)
def test_prehardened_bar_below_its_transition_warns_and_struck_it_fails(
    service, impact, verdict
):
    answer = prehard(service, impact)
    assert answer.verdict == verdict
    assert "-70 to -20 °C (Charpy V-notch)" in answer.text


def test_medium_carbon_bar_as_rolled_is_brittle_in_frost_and_struck_it_is_refused():
    answer = gate(-20, "hammered", steel="c45", condition="hot-rolled")
    assert answer.verdict == "fail"
    assert "a blow or a notch may break it" in answer.text
    assert gate(-20, "light", steel="c45", condition="hot-rolled").verdict == "marginal"


def test_cold_drawing_moves_the_transition_up():
    rolled, cold_drawn = (
        transition(work(**{**BOUGHT, "steel": "c45", "condition": name}), 20.0)
        for name in ("hot-rolled", "cold-drawn")
    )
    assert cold_drawn.low_c - rolled.low_c == pytest.approx(25)


def test_austenitic_steel_stays_tough():
    assert gate(-60, "hammered", steel="x5crni18-10", condition="annealed").verdict == "pass"


@pytest.mark.parametrize(
    "given_work",
    [
        {"steel": "115crv3", "route": "through-torch", "medium": "water"},
        {"steel": "42crmo4", "route": "through-torch"},
        {"steel": "16mncr5", "route": "case-compound"},
    ],
    ids=["tool steel", "alloy steel tempered low", "case"],
)
def test_what_is_hard_is_unknown_in_the_cold_and_says_so(given_work):
    answer = gate(-20, "light", 55.0, source="oxy-propane", **{"medium": "oil", **given_work})
    assert answer.verdict == "marginal"
    assert "not known" in answer.text


@given(st.sampled_from(sorted(CATALOG.steels)), st.floats(15.0, 66.0))
def test_a_harder_state_is_never_called_tougher(slug, hrc):
    bar = work(slug, "through-torch")
    soft, hard = transition(bar, hrc), transition(bar, hrc + 5)
    assert hard is None or hard == soft


ORDER = ("pass", "marginal", "fail")
BAR = work(**{**BOUGHT, "steel": "c45", "condition": "hot-rolled"})


@given(st.floats(-150.0, -1.0), st.floats(0.1, 60.0), st.sampled_from(["light", "hammered"]))
def test_colder_service_is_never_judged_better(service, colder, impact):
    warm, cold = (
        cold_gate(BAR, 20.0, asked(
            {"limit.service_temperature": at, "load.impact": impact}))
        for at in (service, max(service - colder, -200.0))
    )  # fmt: skip
    assert ORDER.index(cold.verdict) >= ORDER.index(warm.verdict)


def test_the_cold_counts_among_the_gates_of_an_option():
    changes = {"limit.service_temperature": -20, "load.impact": "hammered"}
    job, bar = resolved(asked(changes), CATALOG), work(**{**BOUGHT, "steel": "c45"})
    judged = judge(predict(prepare(bar, job), NO_TEMPER), 0.0, job)
    assert next(g for g in judged.gates if g.name == "cold").verdict == "fail"
    assert judged.verdict == "fail"
