"""The letterhead: asked on the workshop's view, kept with it, and on the letter."""

from tests.form import said
from ui import letterhead, store
from ui.labels import plain

MARK = b"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><circle cx='4' r='4'/></svg>"


def type_in(page, field, value, area=False):
    boxes = page.text_area if area else page.text_input
    boxes(key=f"letterhead//{field}").set_value(value).run()
    assert not page.exception


def test_what_is_asked_stands_on_the_letter(advised):
    advised.switch_page("views/workshop.py").run()
    type_in(advised, "name", "Hollow Lane Works")
    type_in(advised, "address", "1 Hollow Lane\n\n  Nowhere ", area=True)
    type_in(advised, "terms", "Thirty days net", area=True)
    uploader = advised.file_uploader(key="letterhead//logo")
    uploader.set_value(("mark.svg", MARK, "image/svg+xml")).run()
    assert "mark.svg" in said(advised).replace("\\", "")
    sender, wrong = letterhead.sender(None)
    assert wrong == ""
    assert sender.identity.address == ("1 Hollow Lane", "Nowhere")
    assert sender.logo.content == MARK
    advised.switch_page("views/customer.py").run()
    assert "without a letterhead" not in said(advised)
    advised.switch_page("views/workshop.py").run()
    assert advised.text_input(key="letterhead//name").value == "Hollow Lane Works"
    advised.button(key="letterhead/drop").click().run()
    assert letterhead.sender(None)[0].logo is None


def test_without_one_the_letter_says_so(advised):
    advised.switch_page("views/customer.py").run()
    assert "without a letterhead" in said(advised)


def test_each_workshop_has_its_own_and_starts_from_the_one_of_none():
    store.keep_letterhead("", {"name": "Either"})
    store.keep_letterhead("shed", {"name": "Shed"})
    assert letterhead.sender("shed")[0].identity.name == "Shed"
    assert letterhead.sender("toolroom")[0].identity.name == "Either"


def test_a_fault_is_said_at_its_field_and_nothing_is_signed(blank):
    blank.switch_page("views/workshop.py").run()
    type_in(blank, "phone", "12345")
    assert "A letterhead begins with a name" in said(blank)
    type_in(blank, "name", "turned\u202eround")
    assert plain("one line without control characters") in said(blank)
    assert letterhead.sender(None)[0].identity is None
    assert letterhead.faults({}) == {}


def test_a_mark_that_is_no_picture_is_refused_in_words(blank):
    blank.switch_page("views/workshop.py").run()
    blank.file_uploader(key="letterhead//logo").set_value(("a.png", b"no", "image/png")).run()
    assert not blank.exception
    assert "logo must be a picture" in blank.error[0].value
    assert "logo" not in store.letterhead("")
