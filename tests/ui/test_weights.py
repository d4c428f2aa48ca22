from tests.form import said


def test_weights_move_the_order_live(advised):
    weights_ = advised.radio(key="weights/preset")
    weights_.set_value("cheap").run()
    assert not advised.exception
    assert "first by these weights" in said(advised) or "stays first" in said(advised)
    advised.button(key="weights/take").click().run()
    assert advised.session_state["visit"].draft["priorities"] == {"preset": "cheap"}
    assert "The part was changed since" not in said(advised)
