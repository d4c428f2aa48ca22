import numpy as np
import pytest

from catalog import load_catalog
from selector.duty.wear import (
    carbide_gain,
    edge_loss_hrc,
    has_edge,
    is_cutting,
    life,
    wearing_carbon_wt_pct,
)
from selector.job.job import resolved
from tests.dog import GONE, asked, work

CATALOG = load_catalog()
STRUCK = {"zone.0.wear": "edge-impact", "load.impact": "hammered"}
GRIT = {"zone.0.wear": "abrasive"}


def near(changes=None):
    return resolved(asked(changes), CATALOG)


def loss(steel, changes, route="through-torch"):
    job = near(changes)
    return np.median(edge_loss_hrc(work(steel, route), job.leading, job.asked, job.shared()))


def sampled_life(steel, hrc, changes):
    job = near(changes)
    return life(work(steel, "through-torch"), hrc, job.leading, job.asked, job.shared())


@pytest.mark.parametrize("changes", [STRUCK, GRIT], ids=["struck edge", "grit"])
def test_a_tool_steel_outlasts_medium_carbon_steel_of_equal_hardness(changes):
    assert loss("c45", changes) > loss("c75s", changes) > loss("115crv3", changes)
    assert loss("115crv3", changes) == 0


def test_beyond_the_carbon_of_chisels_a_struck_edge_gains_nothing():
    assert loss("c105u", STRUCK) == loss("x153crmov12", STRUCK) == 0


@pytest.mark.parametrize(
    "changes",
    [{"zone.0.wear": "sliding"}, {"zone.0.wear": "edge-impact", "load.impact": "light"}],
    ids=["sliding", "claws"],
)
def test_what_does_not_cut_loses_no_edge(changes):
    assert loss("c45", changes) == 0
    job = near(changes)
    assert not is_cutting(job.leading, job.asked)


def test_a_named_edge_cuts_without_blows():
    job = near({"zone.0.wear": "edge-impact", "part.feature": [{"kind": "edge"}]})
    assert is_cutting(job.leading, job.asked)


def test_a_tool_that_presses_is_not_judged_by_its_edge():
    soft = {**STRUCK, "zone.0.hardness": {"min": "42 HRC", "max": "48 HRC"}}
    middling = {**STRUCK, "zone.0.hardness": {"min": "48 HRC", "max": "54 HRC"}}
    assert loss("c45", soft) == 0
    assert 0 < loss("c45", middling) < loss("c45", {**STRUCK, "zone.0.hardness": GONE})


def test_a_case_brings_its_own_carbon():
    assert wearing_carbon_wt_pct(work("16mncr5", "pack-carburise")) == 0.8
    assert wearing_carbon_wt_pct(work("16mncr5", "through-torch")) < 0.25


@pytest.mark.parametrize(
    ("changes", "edged"),
    [({}, False), ({"part.feature": []}, False), ({**STRUCK, "part.feature": []}, True)],
    ids=["teeth", "plain", "struck"],
)
def test_what_has_an_edge(changes, edged):
    job = near(changes)
    assert has_edge(job.leading, job.asked) == edged


def test_life_is_counted_from_the_softest_that_would_do():
    job = near()
    same, more = (
        life(
            work("c45"),
            np.full(512, job.leading.floor_hrc + d),
            job.leading,
            job.asked,
            job.shared(),
        )
        for d in (0.0, 8.0)
    )
    assert same == pytest.approx(1.0)
    assert np.all(more > 1)


def test_the_error_of_a_wear_relation_is_sampled_and_hits_all_steels_alike():
    hrc = np.full(512, 60.0)
    lives = [sampled_life(steel, hrc, GRIT) for steel in ("c45", "115crv3", "x153crmov12")]
    assert all(judged.std() > 0.01 * judged.mean() for judged in lives)
    poor, tool, rich = lives
    assert np.all(poor < tool)
    assert np.mean(tool < rich) > 0.9
    # The further a steel is from plain tool steel, the less sure its life beside it.
    assert np.std(np.log(poor / tool)) > 2 * np.std(
        np.log(sampled_life("c75s", hrc, GRIT) / tool)
    )


@pytest.mark.parametrize("steel", ["x153crmov12", "hs6-5-2", "x100crmov5", "x105crmo17"])
def test_hard_carbides_outlast_plain_steel_of_equal_hardness_under_grit(steel):
    job = near(GRIT)
    gain = carbide_gain(work(steel, "through-torch"), job.leading, job.asked)
    assert 1.05 < gain.ratio < 2.0
    assert gain.log_sd > 0


@pytest.mark.parametrize("changes", [STRUCK, {"zone.0.wear": "sliding"}, {}])
def test_hard_carbides_add_nothing_at_a_struck_edge_or_in_plain_sliding(changes):
    job = near(changes)
    gain = carbide_gain(work("x153crmov12", "through-torch"), job.leading, job.asked)
    assert gain.ratio == 1
    assert gain.log_sd == 0


def test_carbon_bound_in_hard_carbides_is_not_counted_twice():
    assert wearing_carbon_wt_pct(work("x153crmov12", "through-torch")) == 1.0


def test_life_without_a_window_is_counted_from_plain_bar():
    job = near({"zone.0.hardness": GONE, "zone.0.severity": "light"})
    assert job.leading.floor_hrc is None
    # Sliding: in proportion to hardness, 400 HV over 200 HV (40.8 HRC in ISO 18265).
    judged = life(work("c45"), np.full(512, 40.8), job.leading, job.asked, job.shared())
    assert np.median(judged) == pytest.approx(2.0, abs=0.02)
