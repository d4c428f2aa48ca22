import pytest

from selector.errors import Problem
from selector.requirement.question import question
from tests.form import field, said
from ui import fields, form, held, labels, session
from ui.draft import read


def test_a_fault_away_from_its_field_has_title_and_key():
    said_ = form.sentence(Problem("load.axial", "at least 0", "-3 N", "Check it."))
    assert said_ == "Pull or push (load.axial): must be at least 0; got -3 N. Check it."
    assert form.sentence(Problem("file a.toml", "text", "bytes", "x")).startswith(
        "file a.toml:"
    )


def test_the_summary_names_the_first_three():
    problems = [Problem(f"part.section.{n}.size", "", "", "") for n in range(1, 6)]
    assert form.summary(problems).startswith(r"To be looked at \(5\)\: Sections 1\: size;")
    assert form.summary(()) == ""


def test_faults_stand_at_their_places():
    assert form.faults([Problem("part.name", "given", "nothing", "Add it.")]) == {
        "part.name": ["Please answer."]
    }


@pytest.mark.parametrize(
    ("path", "typed", "words"),
    [
        ("part.section.1.size", "wide", "Must be a length written as"),
        ("part.section.1.size", "25 kg", "Must be a length in a unit"),
        ("part.section.2.length", "-4", "Must be between"),
        ("load.torque", "90", "Must be a torque with its unit"),
        ("zone.1.hardness.min", "12 HRC", "Must be 20 HRC or more"),
    ],
)
def test_a_bad_answer_is_said_once_at_its_field_and_kept(with_claw, path, typed, words):
    with_claw.text_input(key=field(with_claw, path)).set_value(typed).run()
    assert said(with_claw).count(words) == 1
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert with_claw.title[0].value == "Your part"
    assert said(with_claw).count(words) == 1
    assert with_claw.text_input(key=field(with_claw, path)).value == typed


def test_what_is_blank_is_asked_for_only_after_advise(blank):
    assert "Please answer" not in said(blank)
    blank.button(key="part/advise").click().run()
    assert said(blank).count("Please answer") >= 5
    assert blank.title[0].value == "Your part"


def test_a_section_is_renamed_resized_added_and_removed(with_claw):
    """The first edit anyone makes."""
    name = with_claw.text_input(key=field(with_claw, "part.section.1.name"))
    name.set_value("1 claws").run()
    assert not with_claw.exception
    with_claw.button(key="add/part.section").click().run()
    with_claw.text_input(key=field(with_claw, "part.section.3.size")).set_value("10 mm").run()
    with_claw.button(key="drop/part.section.2").click().run()
    visit = with_claw.session_state["visit"]
    assert [s.get("size") for s in visit.draft["part"]["section"]] == ["25 mm", "10 mm"]
    assert [zone["section"] for zone in visit.draft["zone"]] == [[1]]
    assert visit.draft["part"]["section"][0]["name"] == "1 claws"
    with_claw.button(key="lay/2").click().run()
    assert with_claw.session_state["visit"].draft["zone"][1]["section"] == [2]


def test_an_answer_under_way_does_not_bring_back_what_was_closed(with_claw):
    mate, hard = (field(with_claw, f"zone.1.mate.{name}") for name in ("material", "hardness"))
    for text in ("50 HRC", ""):
        with_claw.text_input(key=mate).set_value("bush").run()
        with_claw.text_input(key=hard).set_value("9 HRC").run()
        with_claw.text_input(key=mate).set_value("")
        with_claw.text_input(key=hard).set_value(text).run()
        assert read(with_claw.session_state["visit"].draft, "zone.1.mate") is None


def test_a_mate_comes_and_goes(with_claw):
    mate = field(with_claw, "zone.1.mate.material")
    with_claw.text_input(key=mate).set_value("bush").run()
    assert with_claw.session_state["visit"].draft["zone"][0]["mate"] == {"material": "bush"}
    wears = field(with_claw, "zone.1.mate.should_wear")
    with_claw.selectbox(key=wears).set_value("mate").run()
    with_claw.text_input(key=mate).set_value("").run()
    assert "mate" not in with_claw.session_state["visit"].draft["zone"][0]
    assert wears not in {box.key for box in with_claw.selectbox}
    with_claw.button(key="part/advise").click().run()
    assert "Please answer" not in said(with_claw)


def test_hardness_is_known_or_worked_out(with_claw):
    for name in ("min", "max"):
        box = with_claw.text_input(key=field(with_claw, f"zone.1.hardness.{name}"))
        assert box.value
        box.set_value("").run()
    assert "hardness" not in with_claw.session_state["visit"].draft["zone"][0]


@pytest.mark.parametrize(
    "typed", ["$x^2$ :red[a]", "'\"\\<b>", "\x00", "9" * 400, "½ in", "−3", "nan", "1e999"]
)
def test_odd_text_breaks_nothing(with_claw, typed):
    inputs = [box.key for box in with_claw.text_input]
    for key in inputs:
        with_claw.text_input(key=key).set_value(typed)
    with_claw.run()
    assert not with_claw.exception
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert with_claw.title[0].value == "Your part"


@pytest.mark.parametrize("typed", ["$x^2$ :red[a]", "\x00", "9" * 80])
def test_odd_text_breaks_no_workshop(with_claw, typed):
    with_claw.switch_page("views/workshop.py").run()
    for place in ("heat", "bath", "temper", "stock"):
        with_claw.button(key=f"add/workshop.{place}").click().run()
    for key in [box.key for box in (*with_claw.text_input, *with_claw.text_area)]:
        boxes = (
            with_claw.text_input
            if key in {b.key for b in with_claw.text_input}
            else (with_claw.text_area)
        )
        boxes(key=key).set_value(typed)
    with_claw.run()
    assert not with_claw.exception
    with_claw.button(key="workshop/keep").click().run()
    assert not with_claw.exception


def test_the_words_of_a_question_are_the_requirements(with_claw):
    for box in (*with_claw.text_input, *with_claw.selectbox):
        path = box.key.partition("/")[2].partition("/")[2]
        asked = question(path)
        if asked is not None:
            assert box.label == fields.title(path), path


def test_an_answer_to_the_form_before_is_not_taken(monkeypatch):
    monkeypatch.setattr(session.st, "session_state", {})
    monkeypatch.setattr(session.st, "query_params", {})
    session.start({"part": {"name": "claw"}})
    key = held.widget("part.name", "cam")
    session.here().fills["part"] += 1
    form._keep(key, "part.name", "text")
    assert session.here().draft["part"]["name"] == "claw"
    key = held.widget("part.name", "cam")
    form._keep(key, "part.name", "text")
    assert session.here().draft["part"]["name"] == "cam"


def test_every_answer_has_words():
    assert labels.words("none", "safety_use") == "Nothing but the part"
    assert labels.words("sharp-corner") == "Sharp corner"
