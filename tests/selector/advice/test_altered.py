import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.altered import (
    article,
    demands_eased,
    sent_out,
    sources_for,
    thought_of,
)
from tests.dog import asked, only

KNOWN = load_catalog()
WHOLE = {
    "load.bending": "20 N m",
    "load.axial": "900 N",
    "limit": {"runout": 0.2, "days": 4, "budget": 100, "currency": "EUR"},
    "workshop.stock": [{"steel": "C45"}],
    "workshop.only_stock": True,
    "workshop.heat": [{"source": "oxy-propane"}],
    "workshop.bath": [{"medium": "warm-water"}],
}


@pytest.fixture(scope="module")
def texts():
    advice = advise(asked(WHOLE), only("c45"), route="as-bought")
    return [change.text for change in thought_of(advice)]


@pytest.mark.parametrize(
    "words",
    [
        "temperature crayon",
        "thermocouple",
        "kitchen oven",
        "bath of oil",
        "foil",
        "bar from a dealer",
        "Sent out to a firm",
        "If 48 HRC is enough",
        "If 58 HRC is not too much",
        "tenth less torque",
        "tenth less bending",
        "tenth less axial",
        "26 mm",
        "fillets 1 mm larger",
        "0.25 mm left on and ground true",
        "run out 0.4 mm",
        "8 days",
        "budget of 125",
    ],
)
def test_every_tool_and_demand_is_thought_of_once(texts, words):
    assert sum(words in text for text in texts) == 1


def test_what_the_workshop_has_is_not_offered():
    advice = advise(asked(), only("c45"), route="as-bought")
    offered = " ".join(change.text for change in thought_of(advice))
    assert "kitchen oven" not in offered
    assert "bath of oil" not in offered
    assert "dealer" not in offered


def test_a_window_taken_from_the_duty_is_eased_like_a_stated_one():
    derived = asked({"zone.0.hardness": None})
    advice = advise(derived, only("c45"), route="as-bought")
    eased = [c for c in thought_of(advice) if "is enough" in c.text]
    assert len(eased) == 1
    assert eased[0].asked.zone[0].hardness is not None


def test_a_workshop_without_heat_is_offered_a_torch_with_its_bath():
    advice = advise(asked({"workshop.heat": []}), only("c45"), route="as-bought")
    first = next(iter(thought_of(advice)))
    assert "hand torch" in first.text
    assert [heat.source for heat in first.asked.workshop.heat] == ["hand-torch"]


def test_each_change_changes_the_requirement_and_leaves_it_valid():
    advice = advise(asked(WHOLE), only("c45"), route="as-bought")
    for change in thought_of(advice):
        assert change.asked != advice.asked
        kind = type(change.asked)
        # Sizes of the requirement are in our units already.
        again = kind.model_validate(change.asked.model_copy().__dict__)
        assert again == change.asked


def test_only_what_is_stated_is_eased():
    assert [c.text for c in demands_eased(asked({"load.torque": None}))] == []


def test_what_is_ground_after_the_heat_is_not_told_to_be():
    bent = {"limit.runout": "0.05 mm"}
    texts = [c.text for c in demands_eased(asked(bent))]
    assert any("ground true" in text for text in texts)
    ground = {**bent, "part.finish_after": ["toolpost-grinder"]}
    assert not any("ground true" in c.text for c in demands_eased(asked(ground)))


def test_a_route_gets_the_source_and_the_bath_it_wants():
    routes = [KNOWN.routes[slug] for slug in ("through-furnace", "normalise", "as-bought")]
    texts = [change.text for change in sources_for(asked(), routes, KNOWN)]
    assert texts
    assert len(texts) == len(set(texts))
    assert any("furnace" in text for text in texts)


def test_work_is_sent_out_where_it_was_not():
    assert [c.text for c in sent_out(asked())] == ["Sent out to a firm"]
    assert list(sent_out(asked({"workshop.subcontract": True}))) == []


def test_things_have_their_article():
    assert (article("kiln"), article("oven")) == ("a kiln", "an oven")


@pytest.mark.parametrize(("size", "next_size"), [(1.0, "1.2"), (3.0, "3.6"), (25.0, "26")])
def test_a_thin_section_is_made_thicker_by_its_next_size(size, next_size):
    thin = {f"part.section.{k}.size": size for k in (0, 1)}
    texts = [change.text for change in demands_eased(asked(thin))]
    assert f"With section 1 {next_size} mm" in texts
