from selector.advice.record import TurnOut
from selector.requirement.priority import Priorities
from tests.form import said
from ui.weights import _ends, beam


def test_weights_move_the_order_live(advised):
    weights_ = advised.radio(key="weights/preset")
    weights_.set_value("cheap").run()
    assert not advised.exception
    assert "first by these weights" in said(advised) or "stays first" in said(advised)
    advised.button(key="weights/take").click().run()
    assert advised.session_state["visit"].draft["priorities"] == {"preset": "cheap"}
    assert "The part was changed since" not in said(advised)


def test_the_beam_is_cut_by_the_weights_and_the_heaviest_stands_out():
    html = beam(Priorities(points={"cost": 60, "days": 20, "hardness": 20}))
    assert html.count("<li") == 3
    assert "class=tw-most>Cost 60" in html


def test_a_turn_where_all_or_nothing_else_weighs_is_not_told():
    turn = TurnOut(
        criterion="cost", words="cost", now=0.2, below=0.004, first_below="a", above=0.996,
        first_above="b",
    )  # fmt: skip
    assert _ends(turn, {"a", "b"}) == []
    nearer = turn.model_copy(update={"above": 0.6})
    assert _ends(nearer, {"a", "b"}) == [(0.6, "b", "more")]
    assert _ends(nearer, {"a"}) == []
