"""Sheets in inches and °F are those in mm and °C with the figures converted beside."""

import re

import pytest

from selector.handover.drawing.marks import Marks, Note
from selector.handover.imperial import imperial, imperial_card, imperial_marks, in_inches
from tests.dog import asked
from tests.whole_requirement import requirement_number

INCHES = {
    "part.section.0.size": "1 1/8 in", "part.section.0.length": "0.705 in",
    "part.section.1.size": "7/8 in", "part.section.1.length": "4 1/4 in",
}  # fmt: skip


def test_sizes_in_64ths_or_thousandths_are_known_for_inches():
    assert in_inches(asked(INCHES).part)
    assert not in_inches(asked().part)
    # 12.7 mm alone among sizes in mm is no reason.
    assert not in_inches(asked({"part.section.0.size": "12.7 mm"}).part)
    metric = [n for n in range(120) if not in_inches(requirement_number(n).part)]
    assert len(metric) >= 110


@pytest.mark.parametrize(
    ("metric", "both"),
    [
        ("840 °C", "1545 °F / 840 °C"),
        ("820 to 860 °C serves", "1510 to 1580 °F / 820 to 860 °C serves"),
        ("(50 to 65 °C)", "(122 to 149 °F / 50 to 65 °C)"),
        ("-75 °C, 36 min", "-103 °F / -75 °C, 36 min"),
        ("holds within 10 °C", "holds within 18 °F / 10 °C"),
        ("hotter by 15 °C", "hotter by 27 °F / 15 °C"),
        ("(770 °C): 70 °C more", "(1420 °F / 770 °C): 126 °F / 70 °C more"),
        ("a part 100 °C too hot", "a part 180 °F / 100 °C too hot"),
        ("at 18 and 40 mm to R2", "at 0.709 and 1.575 in / 18 and 40 mm to R0.079 in / 2 mm"),
        ("at 80, 90 and 95 mm", "at 3.15, 3.543 and 3.74 in / 80, 90 and 95 mm"),
        (
            "16MnCr5, 40 mm: Ø45 × 55 mm",
            "16MnCr5, 1.575 in / 40 mm: Ø1.772 × 2.165 in / Ø45 × 55 mm",
        ),
        ("zone 2 and 7 mm past", "zone 2 and 0.276 in / 7 mm past"),
        ("Ø14 or over", "Ø0.551 in / Ø14 mm or over"),
        ("flat 28 × 112 mm", "flat 1.102 × 4.409 in / 28 × 112 mm"),
        ("cuts of 0.02 mm", "cuts of 0.0008 in / 0.02 mm"),
        ("up to 25 µm of it", "up to 0.001 in / 25 µm of it"),
        ("49 to 57 HRC, 2 × 60 min, 15 l", "49 to 57 HRC, 2 × 60 min, 15 l"),
    ],
)
def test_inches_and_fahrenheit_stand_first(metric, both):
    assert imperial(metric) == both


def test_the_metric_figure_always_stays():
    for text in ("860 °C", "0.3 mm", "at 18 and 40 mm", "Ø6 mm", "10 µm"):
        assert imperial(text).endswith(text.removeprefix("at "))


def test_what_the_user_wrote_is_left_as_it_is():
    data = {
        "title": "Pin 10 mm",
        "groups": [{"name": "zone 5 mm", "steps": [{"action": "Heat to 840 °C",
                                                    "big": "840 °C", "small": "cherry"}]}],
    }  # fmt: skip
    made = imperial_card(data)
    assert made["title"] == "Pin 10 mm"
    (group,) = made["groups"]
    assert group["name"] == "zone 5 mm"
    (step,) = group["steps"]
    assert step["action"] == "Heat to 1545 °F / 840 °C"
    assert (step["big"], step["small"]) == ("1545 °F", "840 °C, cherry")


def test_a_drawing_has_inches_alone():
    marks = Marks(said=("54 HRC, 1.5 mm deep",), notes=(Note(25.4, "hard to 25"),),
                  heat_words="FLAME 0–25 mm: claws and 7 mm past")  # fmt: skip
    made = imperial_marks(marks)
    assert made.said == ("54 HRC, 0.059 in deep",)
    assert made.notes[0].words == "hard to 0.984"
    assert made.heat_words == "FLAME 0–0.984 in: claws and 0.276 in past"
    assert not re.search(r"mm|°C", " ".join((*made.said, made.heat_words)))
