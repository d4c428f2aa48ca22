from selector.requirement.priority import Priorities
from tests.form import said
from ui.weights import beam


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
