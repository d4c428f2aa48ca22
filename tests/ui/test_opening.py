import pytest

from catalog import load_catalog
from catalog.example import example_names
from tests.form import field, said, unfold
from ui import opening
from ui.draft import checked

NINE = b"""
safety_use = "maybe"
[part]
name = "nine"
quantity = 0
[[part.section]]
shape = "oval"
size = "28 mm"
length = "18 mm"
[[zone]]
section = [1, 9]
wear = "much"
[load]
impact = "hard"
cycles = "daily"
[workshop]
heat = []
light = "moon"
colour = "blue"
"""


@pytest.mark.parametrize("name", example_names())
def test_an_example_lacks_nothing_but_safety_use(name):
    requirement, problems = checked(opening.example(name), load_catalog())
    assert requirement is None
    assert [problem.field for problem in problems] == ["safety_use"]


def upload(page, name, content):
    page.file_uploader(key="start/file").set_value((name, content, "text/plain")).run()
    assert not page.exception
    return [error.value for error in page.error]


def test_a_sound_file_opens_the_form(page, claw, claw_text):
    assert upload(page, "claw.toml", claw_text.encode()) == []
    assert page.title[0].value == "Your part"
    assert page.session_state["visit"].draft == {**claw, "limit": {}}


def test_every_fault_of_a_file_is_told_once_with_its_key(page):
    told = upload(page, "nine.toml", NINE)
    for key in (
        "safety_use", "part.quantity", "part.section.1.shape", "zone.1.wear", "load.impact",
        "load.cycles", "workshop.light", "workshop.colour",
    ):  # fmt: skip
        assert sum(key.replace("_", r"\_") in line for line in told) == 1, key
    assert page.title[0].value.startswith("What steel")


@pytest.mark.parametrize(
    ("name", "content", "words"),
    [
        ("a.toml", b"", "an empty file"),
        ("a.toml", b"\x89PNG\r\n\x1a\n\x00\xff", "UTF\\-8 text"),
        ("a.json", b'{"part": {"name": "\\ud800"}}', "half a character"),
        ("a.toml", ".".join(["a"] * 20_000).encode() + b"=1", "endless nesting"),
        ("a.toml", b"a = ", "valid TOML"),
        ("a.json", b"[1]", "a table of keys and values"),
    ],
)
def test_what_is_no_requirement_is_refused_in_plain_words(page, name, content, words):
    told = upload(page, name, content)
    assert len(told) == 1
    assert words in told[0]


def test_two_thousand_sections_are_refused(page, claw_text):
    row = '[[part.section]]\nshape = "round"\nsize = "9 mm"\nlength = "1 mm"\n'
    told = upload(page, "long.toml", (claw_text + 2000 * row).encode())
    assert any("at most 30 entries" in line for line in told)


def test_a_file_with_a_slip_of_typing_opens_with_the_slip_at_its_field(page, claw_text):
    slip = claw_text.replace("90 lb ft", "90")
    assert upload(page, "slip.toml", slip.encode()) == []
    assert page.title[0].value == "Your part"
    assert page.text_input(key=field(page, "load.torque")).value == "90"
    assert said(page).count("Must be a torque with its unit") == 1


def test_a_blank_part_is_blank(blank):
    for fold in ("features", "rest", "sections"):
        unfold(blank, fold)
    assert blank.radio(key=field(blank, "safety_use")).value is None
    for path in ("part.name", "part.section.1.size", "load.torque", "limit.runout"):
        assert blank.text_input(key=field(blank, path)).value == ""
    for path, value in (
        ("part.quantity", "1"),
        ("limit.budget", ""),
        ("load.failure_cost", ""),
    ):
        assert blank.text_input(key=field(blank, path)).value == value


def test_numbers_and_ticks_given_as_text_are_what_they_stand_for(page, claw_text):
    text = claw_text.replace("turns_part = true", 'turns_part = "no"')
    text = text.replace('name = "claw"', 'name = "claw"\nquantity = "3"')
    assert upload(page, "text.toml", text.encode()) == []
    assert page.text_input(key=field(page, "part.quantity")).value == "3"
    page.switch_page("views/workshop.py").run()
    assert not page.checkbox(key=field(page, "workshop.turns_part")).value
