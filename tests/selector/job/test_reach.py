from catalog import load_catalog
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.job.reach import able
from tests.dog import asked

KNOWN = load_catalog()
EVERYTHING = [
    {"source": name} for name in ("oxy-propane", "muffle-furnace", "kitchen-oven", "salt-bath")
]


def found(changes=None):
    return able(resolved(asked(changes), KNOWN))


def by_slug(changes=None):
    return {reach.route.slug: reach for reach in found(changes).routes}


def test_a_route_is_open_just_when_some_steel_can_go_it():
    for changes in (None, {"workshop.heat": EVERYTHING}, {"workshop.subcontract": True}):
        job = resolved(asked(changes), KNOWN)
        gone = {
            item.treatment.route.slug
            for item in screened(job.asked, KNOWN, job.bench)
            if item.gate is None and item.treatment.route.process != "none"
        }
        assert {r.route.slug for r in able(job).routes if not r.barred} == gone


def test_what_is_wanting_is_said():
    shed = by_slug()
    assert shed["through-furnace"].barred.startswith("needs a heat source")
    assert "firm" in shed["subcontract-nitride"].barred
    assert {m.slug for m in shed["local-torch"].media} == {"warm-water", "oil"}
    assert by_slug({"workshop.bath": []})["local-torch"].media == ()
    whole = by_slug({"zone": [{"section": [1, 2], "wear": "sliding", "severity": "medium"}]})
    assert "heat it whole" in whole["local-torch"].barred


def test_a_part_thicker_than_the_flame_heats_evenly_is_named():
    assert by_slug()["through-torch"].beyond is None
    thick = by_slug({"part.section.1.size": "32 mm"})["through-torch"]
    assert thick.beyond is not None
    assert thick.beyond.slug == "oxy-propane"
    assert thick.thick_mm == 32.0


def test_an_oven_tempers_no_hotter_than_it_is_said_to():
    oven = {"workshop.heat": [{"source": "kitchen-oven", "ceiling": "230 degC"}]}
    assert found(oven).temper_c == {"oven": 230.0}
