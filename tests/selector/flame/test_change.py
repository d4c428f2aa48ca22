import pytest

from catalog import load_catalog
from selector.flame.arrangement import arranged
from selector.flame.case import follow
from selector.flame.change import first_change, given_a_bath, heated_whole
from selector.flame.outcome import Setup
from selector.job.job import resolved
from selector.torch.part import PASTS
from tests.dog import asked, work

CATALOG = load_catalog()


def job(changes=None):
    return resolved(asked(changes), CATALOG, count=1)


def local(steel="c45", medium="warm-water", source="oxy-propane"):
    return work(steel, "local-torch", medium, source)


def changed(there, treatment):
    out = arranged(treatment, there, there.leading)
    return out, first_change(treatment, there, there.leading, out)


def test_a_still_part_is_turned():
    there = job({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    out, change = changed(there, local())
    assert [check.name for check in out.failed] == ["even"]
    assert change.text.startswith("hold and turn the part in the flame")
    assert change.at_hand
    assert change.outcome.failed == ()


def test_a_small_torch_is_replaced_and_the_answer_recomputed():
    heat = [{"source": "hand-torch"}, {"source": "kitchen-oven"}]
    sizes = {"part.section.0.size": 36, "part.section.1.size": 36}
    there = job({**sizes, "workshop.heat": heat})
    out, change = changed(there, local(source="hand-torch"))
    assert [check.name for check in out.failed] == ["reach"]
    assert change.text.startswith("take an oxy-propane heating torch")
    assert not change.at_hand
    assert change.outcome.surface_hrc > 50.0


def test_a_mild_bath_gives_way_to_a_harsher_one():
    there = job({"workshop.bath": [{"medium": "oil"}]})
    out, change = changed(there, local(medium="oil"))
    assert "hard" in {check.name for check in out.failed}
    assert change.text.startswith("quench in")
    assert change.outcome.surface_hrc > out.surface_hrc + 3.0


def test_what_no_change_mends_has_none():
    there = job({"zone.0.hardness": {"min": "66 HRC", "must": True}})
    assert changed(there, local())[1] is None


def test_nothing_that_holds_it_is_one_change():
    there = job({"workshop.heat": [{"source": "hand-torch"}, {"source": "kitchen-oven"}],
                    "workshop.turns_part": False, "part.section.0.size": 8,
                    "part.section.1.size": 8, "load.torque": "2 N m"})  # fmt: skip
    out, change = changed(there, local(source="hand-torch"))
    assert [check.name for check in out.failed] == ["held"]
    assert change.text.startswith("hold it")
    assert change.outcome is out


@pytest.mark.parametrize("medium", ["oil", "warm-water"])
def test_a_change_never_repeats_what_is_done(medium):
    there = job({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    _, change = changed(there, local("42crmo4", medium))
    assert change is None or medium not in change.text


def small_torch(size, length="40 mm"):
    heat = [{"source": "hand-torch"}, {"source": "kitchen-oven"}]
    sections = [{"shape": "round", "size": size, "length": n} for n in (length, "200 mm")]
    zone = {"zone.0.hardness": {"min": "50 HRC"}, "load.torque": "20 N m"}
    changes = {"workshop.heat": heat, "part.section": sections, "part.feature": [], **zone}
    return job(changes), local("42crmo4", "oil", "hand-torch")


def test_a_miss_is_told_of_the_flame_held_together():
    there, treatment = small_torch("36 mm")
    out = arranged(treatment, there, there.leading)
    assert not out.heated.reached
    assert out.setup.past_mm == PASTS[0] * 36.0


def test_what_else_moves_with_a_change_is_said():
    still = {"workshop.turns_part": False, "workshop.held_by": "tongs"}
    there = job(still)
    out, change = changed(there, local())
    old, new = out.setup, change.outcome.setup
    assert (old.past_mm != new.past_mm) is ("past the zone, not" in change.text)
    assert (old.hold_s != new.hold_s) is ("hold the heat" in change.text)


def test_a_hot_bath_is_let_cool():
    """Near its boiling point water keeps a skin of vapour."""
    there = job({"workshop.bath": [{"medium": "water", "temperature": "95 degC"}]})
    out, change = changed(there, local(medium="water"))
    assert "hard" in {check.name for check in out.failed}
    assert change.text.startswith("let the bath cool to 20 °C")
    assert change.at_hand
    assert change.outcome.failed == ()


def test_a_steel_is_offered_its_own_bath_first():
    """Silver steel is a water-hardening steel: water, not another oil."""
    thick = {f"part.section.{n}.size": 30 for n in (0, 1)}
    window = {"zone.0.hardness": {"min": "55 HRC"}}
    there = job({**thick, **window, "workshop.bath": [{"medium": "oil"}]})
    _, change = changed(there, local("115crv3", "oil"))
    assert "water" in change.text
    assert "oil" not in change.text.partition(":")[0]


def test_a_short_part_that_is_hard_all_over_is_heated_whole():
    short = {"part.section.1.length": 20, "part.feature": [], "zone.0.section": [1, 2]}
    there = job(short)
    change = heated_whole(local("42crmo4", "oil"), there, there.leading)
    assert change.text.startswith("heat the whole part in the flame")
    assert change.outcome.heated.reached
    assert change.outcome.part.zone_mm == (0.0, 50.0)


def test_out_of_the_sun_is_a_change_at_hand():
    """In the sun a heat looks duller than it is, and corners burn."""
    there = job({"workshop.light": "sun", "part.section.0.shape": "square"})
    out, change = changed(there, local())
    assert [check.name for check in out.failed] == ["corner"]
    assert change.text.startswith("judge the heat in the shade")
    assert change.at_hand


def test_what_turned_all_through_is_not_sent_to_another_flame():
    there = job({"workshop.bath": [{"medium": "oil"}]})
    _, change = changed(there, local(medium="oil"))
    assert change.outcome.setup.flame is None


def test_a_bath_at_hand_is_no_change_but_a_treatment_of_its_own():
    there = job({"workshop.bath": [{"medium": "oil"}, {"medium": "water"}]})
    _, change = changed(there, local(medium="oil"))
    assert change is None or "cold water" not in change.text


IN_AIR = {"workshop.bath": [{"medium": "air"}]}


@pytest.mark.parametrize("medium", ["air", None])
def test_where_there_is_no_bath_the_steels_own_is_the_change(medium):
    there = job(IN_AIR)
    change = given_a_bath(local("c45", medium), there, there.leading)
    assert change is not None
    assert change.text.startswith("quench in cold water: ")
    assert not change.at_hand
    assert not change.outcome.failed
    assert change.work.medium.slug == "water"


@pytest.mark.parametrize(
    ("steel", "medium"),
    [("c45", "warm-water"), ("s235", "air"), ("x100crmov5", "air")],
    ids=["a bath is there", "never hardens", "made for air"],
)
def test_a_bath_is_no_change_where_it_is_not_what_lacks(steel, medium):
    there = job(IN_AIR)
    assert given_a_bath(local(steel, medium), there, there.leading) is None


def test_a_flame_is_not_spread_so_thin_that_it_no_longer_brings_the_heat():
    """A hand torch brings 23 mm to heat over one thickness past the zone, not over 1.5."""
    there, treatment = small_torch("23 mm")
    out = arranged(treatment, there, there.leading)
    assert out.heated.reached
    assert out.failed == ()
    wide = Setup(past_mm=1.5 * 23.0)
    assert not follow(treatment, there, wide, there.leading).heated.reached
