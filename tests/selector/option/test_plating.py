from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.decision.judgement import judge
from selector.job.job import resolved
from selector.job.response import plating_holds
from selector.job.treatment import NO_TEMPER
from selector.option.plating import chromed
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import asked, work

CATALOG = load_catalog()
CHROME = work("42crmo4", "subcontract-chrome", None, None, condition="prehard")


def job(**changes):
    return resolved(asked(changes), CATALOG)


def test_the_skin_is_harder_than_any_steel_and_the_core_stays_as_sold():
    here = job()
    found, sold = chromed(prepare(CHROME, here)), prepare(CHROME, here).supply_hrc
    assert 64.0 < np.median(found.surface) < 70.0
    assert found.core == pytest.approx(sold)


def test_the_layer_goes_no_deeper_than_the_route():
    deep = chromed(prepare(CHROME, job(**{"zone.0.depth": 2.0})))
    assert np.median(deep.depth_mm) <= 1.3 * CHROME.route.depth_mm.high


def test_it_is_refused_under_blows():
    gate = plating_holds(asked({"load.impact": "light"}), CHROME)
    assert gate.verdict == "fail"
    assert "chips" in gate.text
    assert plating_holds(asked({"load.impact": "none", "part.feature": []}), CHROME) is None


def test_plating_takes_its_share_of_the_fatigue_limit():
    here = job(**{"load.cycles": "fatigue", "load.impact": "none"})
    plain = replace(CHROME, route=CATALOG.routes["prehard-bar"])
    with_it, without = (
        np.median(judge(predict(prepare(w, here), NO_TEMPER), 0.0, here).values[:, 0])
        for w in (CHROME, plain)
    )
    assert with_it < without
