import numpy as np
import pytest

from selector.need.span import (
    HARDEST_HRC,
    HV,
    SOFTEST_HRC,
    SOURCES,
    Span,
    Spans,
    hrc,
    over,
    span_of,
    spans_of,
    spread,
    window,
)
from selector.need.words import Window


def test_a_span_is_the_first_unbroken_run_that_bears_the_load():
    factor = np.zeros(len(HV))
    factor[10:20] = factor[30:40] = 1.5
    assert span_of(factor, 1.0) == Span(hrc(HV[10]), hrc(HV[19]))
    assert span_of(factor, 2.0) is None
    assert span_of(np.full(len(HV), 3.0), 1.0) == Span(SOFTEST_HRC, HARDEST_HRC)


def test_a_heavier_load_needs_more_and_what_nothing_bears_the_hardest():
    spans = spans_of(HV / 400.0)
    light, stated, heavy = spans.softest()
    assert light < stated < heavy
    # 400 HV is 40.8 HRC in ISO 18265:2013, table A.1.
    assert stated == pytest.approx(40.8, abs=0.1)
    assert Spans(None, None, None).softest() == (HARDEST_HRC,) * 3
    rooted = spans_of(HV / 400.0, power=0.5)
    assert light < rooted.light.low_hrc < rooted.heavy.low_hrc < heavy


def test_an_end_that_binds_nothing_is_left_open():
    assert window(None) is None
    assert window(Span(SOFTEST_HRC, HARDEST_HRC)) == Window(None, None)
    assert window(Span(30.0, 40.0)) == Window(30.0, 40.0)


def test_a_heavy_load_is_as_much_over_the_stated_one_as_a_light_one_is_under():
    assert over(0.0) == 1.0
    assert over(1.3) * over(-1.3) == pytest.approx(1.0)
    assert over(1.0) > 1.0


@pytest.mark.parametrize("relation", SOURCES)
def test_every_figure_names_its_source(relation):
    known = spread((1.0, 2.00049, 3.0), "HRC", relation, torque_nm=3.0)
    assert (known.p05, known.p50, known.p95) == (1.0, 2.0, 3.0)
    assert known.source == SOURCES[relation]
    assert known.inputs == {"torque_nm": 3.0}
