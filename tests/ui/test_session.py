"""What outlives a look at another view, a reload, a second tab, and a change of mind."""

import pytest
from streamlit.testing.v1 import AppTest

from tests.form import field, said
from tests.ui.conftest import APP
from ui import going_on, shop, store


def another_tab(page):
    """The same address in a session of its own."""
    tab = AppTest.from_file(str(APP), default_timeout=60)
    tab.query_params["part"] = page.session_state["visit"].id
    tab.run()
    tab.switch_page("views/part.py").run()
    assert not tab.exception
    return tab


def type_in(page, path, value):
    page.text_input(key=field(page, path)).set_value(value).run()
    assert not page.exception


def test_what_is_typed_outlives_a_look_at_another_view(blank):
    type_in(blank, "part.name", "bit")
    type_in(blank, "part.section.1.size", "half a foot")
    blank.switch_page("views/steels.py").run()
    blank.switch_page("views/part.py").run()
    assert blank.text_input(key=field(blank, "part.name")).value == "bit"
    assert blank.text_input(key=field(blank, "part.section.1.size")).value == "half a foot"


def test_a_reload_finds_the_part_by_its_address(blank):
    type_in(blank, "part.name", "bit")
    tab = another_tab(blank)
    assert tab.text_input(key=field(tab, "part.name")).value == "bit"


def test_a_tab_behind_the_other_goes_on_with_a_copy(blank):
    tab = another_tab(blank)
    type_in(blank, "part.name", "first")
    before = tab.session_state["visit"].id
    type_in(tab, "part.name", "second")
    assert tab.session_state["visit"].id != before
    assert store.part(before)["draft"]["part"]["name"] == "first"
    assert store.part(tab.session_state["visit"].id)["draft"]["part"]["name"] == "second"
    assert "changed in another tab" in tab.info[0].value


def test_the_last_change_is_taken_back(with_claw):
    type_in(with_claw, "part.section.1.size", "26 mm")
    with_claw.button(key="drop/part.section.2").click().run()
    assert len(with_claw.session_state["visit"].draft["zone"]) == 1
    with_claw.button(key="undo").click().run()
    assert with_claw.text_input(key=field(with_claw, "part.section.2.size")).value == "25 mm"
    with_claw.button(key="undo").click().run()
    assert with_claw.text_input(key=field(with_claw, "part.section.1.size")).value == "25 mm"
    assert with_claw.button(key="undo").disabled


def test_old_advice_says_so_and_is_asked_again(advised):
    shown = advised.title[0].value
    advised.switch_page("views/part.py").run()
    type_in(advised, "part.section.1.length", "35 mm")
    advised.switch_page("views/choice.py").run()
    assert "The part was changed since" in said(advised)
    assert advised.title[0].value == shown
    advised.button(key="again").click().run()
    assert "The part was changed since" not in said(advised)
    advised.switch_page("views/part.py").run()
    advised.button(key="undo").click().run()
    advised.switch_page("views/choice.py").run()
    assert "The part was changed since" in said(advised)


def test_a_workshop_is_asked_once_and_kept_by_name(with_claw):
    with_claw.switch_page("views/workshop.py").run()
    with_claw.text_input(key="workshop/name").set_value("shed").run()
    with_claw.button(key="workshop/keep").click().run()
    assert list(store.workshops()) == ["shed"]
    with_claw.button(key="add/workshop.stock").click().run()
    type_in(with_claw, "workshop.stock.1.steel", "EN 8")
    assert store.workshops()["shed"]["stock"] == [{"steel": "EN 8"}]
    other = AppTest.from_file(str(APP), default_timeout=60).run()
    other.button(key="start/blank").click().run()
    assert other.session_state["visit"].shop == "shed"
    assert "EN 8" in said(other)


def test_a_reader_of_the_shop_finds_what_it_has(with_claw):
    lines = shop.summary(with_claw.session_state["visit"].draft["workshop"])
    assert "oxy-propane" in lines["Heat"]
    assert lines["Baths"].count(",") == 1


def test_parts_of_before_are_offered(blank):
    type_in(blank, "part.name", "bit")
    blank.switch_page("views/start.py").run()
    labels = [link.proto.label for link in blank.get("page_link")]
    assert "bit" in labels
    assert going_on.show is not None


@pytest.mark.parametrize(
    "damage",
    [
        {"draft": 5},
        {"draft": {"part": "x"}},
        {"draft": {"part": {"section": [1, 2]}, "zone": "all"}},
        {"draft": {"workshop": {"heat": "fire"}}},
        {"draft": {"zone": [{"section": "1"}]}},
        {"revision": "many"},
        {"asked": [1]},
        {"shop": 7, "aim": 3},
    ],
)
def test_a_part_that_was_damaged_meanwhile_breaks_nothing(claw, damage):
    key = store.new_id()
    store.keep_part(key, {"draft": claw, "revision": 1, **damage})
    store.keep_workshop("shed", {"heat": "fire"})
    page = AppTest.from_file(str(APP), default_timeout=60)
    page.query_params["part"] = key
    page.run()
    assert not page.exception
    page.switch_page("views/part.py").run()
    assert not page.exception
    assert page.title[0].value == "Your part"


def test_a_letterhead_that_was_damaged_meanwhile_breaks_nothing(blank):
    store.keep_letterhead("", {"name": 5, "address": "x", "logo": 1, "terms": [1]})
    blank.switch_page("views/workshop.py").run()
    assert not blank.exception


def test_ticks_and_a_changed_letter_outlive_a_look_at_another_view(advised):
    advised.switch_page("views/bench.py").run()
    step = advised.checkbox[0].key
    advised.checkbox(key=step).check().run()
    advised.switch_page("views/customer.py").run()
    letter = advised.text_area[0]
    letter.set_value(letter.value + "\nWe thank you.").run()
    advised.switch_page("views/choice.py").run()
    advised.switch_page("views/bench.py").run()
    assert advised.checkbox(key=step).value
    advised.switch_page("views/customer.py").run()
    assert advised.text_area[0].value.endswith("We thank you.")
    assert not advised.exception
