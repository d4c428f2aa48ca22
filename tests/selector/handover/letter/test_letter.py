"""Letters of the dog and of parts by number, read back from what is printed."""

import io
from datetime import date

import pytest

from selector.advice.output import advice_out
from selector.handover.drawing.bracket import Bracket
from selector.handover.identity import Identity
from selector.handover.letter.answer import answer
from selector.handover.letter.letter import HEADS, HEADS_OF_WAYS, NOT_FOR, composed, leading
from selector.handover.letter.made import Sender, letter_data, made
from selector.handover.letter.picture import brackets, picture
from selector.handover.letter.said import is_sent_out
from selector.handover.letter.ways import price, ways
from tests.dog import asked, only
from tests.letter_text import allowed, figures, hundred, strange, text_of
from tests.once import advised

TRIED = ("42crmo4", "817m40", "c45", "115crv3", "s235")
DAY = date(2025, 1, 2)
HOSTILE = (
    '#strong[x] $x$ <script>alert("a")</script> & {{ 7*191 }} \\ \u202eback "W' + "W" * 300
)


@pytest.fixture(scope="module")
def dog():
    return advised({"limit.budget": 160, "limit.currency": "EUR"}, *TRIED)


@pytest.mark.parametrize("tone", ["brief", "full"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_every_figure_of_the_pdf_is_one_of_the_record(dog, tone, paper):
    out = advice_out(dog)
    for shown, option in list(zip(out.options, dog.options, strict=True))[
        :: 3 if tone == "full" else 5
    ]:
        letter = composed(dog.asked, out, shown, tone, DAY)
        text, pages = text_of(
            made(letter, Sender(), picture(dog.job, option), None, (".pdf", paper)).content
        )
        assert pages == 1
        assert strange(text, allowed(dog.asked, out, shown)) == {}
        assert f"{price(shown):.0f} EUR" in text
        assert f"{hundred(shown.passing_all)} times in 100" in text or shown.passing_all > 0.99
        assert shown.id in text.replace(" ", "") or shown.id in text


def test_a_letter_says_what_the_issue_of_a_price_is(dog):
    out = advice_out(dog)
    letter = composed(dog.asked, out, out.options[0], "full", DAY)
    heads = [section.head for section in letter.sections]
    assert heads == [
        HEADS["duty"], HEADS["proposal"], HEADS_OF_WAYS[len(letter.table.heads) - 1],
        HEADS["difference"],
        HEADS["check"], HEADS["rests"],
    ]  # fmt: skip
    assert letter.date == "2 January 2025"
    assert len(letter.table.heads) > 1
    kinds = [way.kind for way in ways(out, out.options[0])]
    assert len(set(kinds)) == len(letter.table.heads)
    rests = " ".join(letter.sections[-1].paragraphs)
    assert NOT_FOR in rests
    assert "invented" in " ".join(letter.small_print)


def test_a_brief_letter_says_less_and_never_leaves_out_what_it_is_not_for(dog):
    out = advice_out(dog)
    full, brief = (composed(dog.asked, out, out.options[0], t, DAY) for t in ("full", "brief"))

    def words(letter):
        return sum(len(p.split()) for s in letter.sections for p in s.paragraphs)

    assert words(brief) < 0.75 * words(full)
    assert NOT_FOR in " ".join(brief.sections[-1].paragraphs)


@pytest.mark.parametrize("use", ["lifting", "brake"])
def test_a_part_that_lives_depend_on_is_passed_on_and_nothing_offered(use):
    requirement = asked({"safety_use": use})
    found = answer(requirement, only("42crmo4", "c45"), None, "full")
    letter = found.letter
    assert not letter.is_offer
    assert letter.table is None
    text, pages = text_of(found.set(Sender(), (".pdf", "a4")).content)
    assert pages == 1
    assert "qualified" in text
    assert "What we propose" not in text
    assert "accepted by the customer" not in text
    assert not figures(text, "EUR")


def test_a_bar_left_as_bought_has_a_letter(few):
    soft = {"zone.0.hardness": {"max": "40 HRC"}, "zone.0.wear": "none"}
    found = answer(asked(soft), few, None, "full")
    text = found.text
    assert "nothing is hardened" in text
    assert "buy nothing that the part needs" in text
    assert "trial piece" not in text


def test_the_first_of_the_advice_stands_beside_another_that_is_proposed(dog):
    out = advice_out(dog)
    letter = composed(dog.asked, out, out.options[2], "full", DAY)
    assert letter.table.heads[1].endswith("first in the advice")
    assert out.options[0].spoken in letter.table.rows[0].cells[1]


def test_hostile_text_stays_text_in_every_form(few):
    changes = {"part.name": HOSTILE.replace("\u202e", "")[:200], "zone.0.name": "<b>&{{7*191}}"}
    found = answer(asked(changes), few, None, "full")
    who = Sender(
        Identity(name="#eval <b>x</b>", address=("$1 \\ `x`", "مرحبا"), terms=("{% x %}",))
    )
    text, pages = text_of(found.set(who, (".pdf", "a4")).content)
    assert "#strong[x] $x$ <script>" in text
    assert pages >= 1
    page = found.set(who, (".html", "a4")).content.decode()
    assert "<script>" not in page
    assert "1337" not in page
    assert "&lt;b&gt;" in page
    assert found.set(who, (".docx", "letter")).content.startswith(b"PK")


def test_a_document_holds_the_same_words(dog):
    import docx  # noqa: PLC0415

    out = advice_out(dog)
    letter = composed(dog.asked, out, out.options[0], "full", DAY)
    drawn = picture(dog.job, dog.options[0])
    made_of = docx.Document(
        io.BytesIO(made(letter, Sender(), drawn, None, (".docx", "a4")).content)
    )
    text = "\n".join(p.text for p in made_of.paragraphs)
    for section in letter.sections:
        for paragraph in section.paragraphs:
            assert paragraph in text
    cells = {cell.text for row in made_of.tables[0].rows for cell in row.cells}
    assert set(letter.table.rows[2].cells) <= cells
    assert len(made_of.inline_shapes) == 1
    assert made_of.core_properties.title == letter.reference


def test_terms_and_who_signs_are_the_workshops_own(dog):
    out = advice_out(dog)
    letter = composed(dog.asked, out, out.options[0], "full", DAY)
    who = Identity(name="Works", terms=("Open for 30 days.",), signs="A. Smith")
    data = letter_data(letter, Sender(who), None)
    assert data["terms"] == ["Open for 30 days."]
    assert data["sign"][0] == "for Works, A. Smith"
    assert data["author"] == "Works"


def test_brackets_run_from_end_to_end_without_a_gap_of_note(dog):
    length = dog.asked.part.length_mm
    for option in dog.options:
        found = brackets(dog.job, option)
        assert all(isinstance(b, Bracket) and b.from_mm < b.to_mm for b in found)
        assert found[0].from_mm < 0.05 * length
        assert found[-1].to_mm > 0.95 * length
        if option.treatment.route.extent == "local" and option.treatment.hardens:
            assert found[0].words == "hard end"
            assert found[-1].words.startswith("left")


def test_the_zone_spoken_of_is_the_hardest(dog):
    assert leading(dog.asked, advice_out(dog)) is dog.asked.zone[0]


def test_ways_done_otherwise_stand_before_those_of_another_steel(dog):
    out = advice_out(dog)
    first = out.options[0]
    seen = ways(out, first)[1:]
    offered = [o for o in out.options if o.id in {item.id for item in out.alternatives}]
    unlike = [o for o in offered if _done(o) != _done(first)]
    assert sum(_done(way.option) != _done(first) for way in seen) >= min(len(unlike), 1)
    assert [price(way.option) for way in seen] == sorted(price(way.option) for way in seen)


def _done(option):
    return option.route_kind, option.condition == "hard-element", is_sent_out(option)
