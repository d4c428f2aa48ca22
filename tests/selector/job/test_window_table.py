from selector.job.window_table import (
    GAUGE,
    HAMMERED,
    KNOCKED,
    PRESSED,
    STRUCK,
    of_trade,
    usual_spring,
)


def test_thin_springs_are_run_harder():
    assert usual_spring(1.0).low_hrc > usual_spring(4.0).low_hrc > usual_spring(8.0).low_hrc


def test_a_face_is_softer_than_an_edge_and_an_edge_than_a_press_tool():
    for severity in ("light", "medium", "heavy"):
        knocked, struck = KNOCKED[severity], STRUCK[severity]
        assert knocked.low_hrc < struck.low_hrc < HAMMERED[severity].low_hrc
        assert HAMMERED[severity].low_hrc < PRESSED[severity].low_hrc <= GAUGE.low_hrc


def test_a_trade_has_a_window_of_its_own():
    assert of_trade("crops").high_hrc < of_trade("keen").high_hrc
