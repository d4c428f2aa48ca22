import json

import pytest

from selector.errors import RequirementError
from selector.requirement import read_requirement, requirement_from
from tests.dog import TEXT, asked, varied


def problems(changes):
    with pytest.raises(RequirementError, match="must be") as refused:
        requirement_from(varied(changes))
    return refused.value.problems


def test_toml_and_json_say_the_same(tmp_path):
    toml, plain = tmp_path / "dog.toml", tmp_path / "dog.JSON"
    toml.write_text(TEXT, encoding="utf-8")
    plain.write_text(json.dumps(varied()), encoding="utf-8")
    assert read_requirement(toml) == read_requirement(str(plain)) == asked()


def test_a_byte_order_mark_does_no_harm(tmp_path):
    path = tmp_path / "dog.toml"
    path.write_text(TEXT, encoding="utf-8-sig")
    assert read_requirement(path) == asked()


def test_all_faults_are_said_at_once_with_places_counted_from_one():
    computed = problems(
        {
            "safety_use": "perhaps",
            "part.section.1.size": "-3 mm",
            "zone.0.wear": "rubbing",
            "load.torque": 90,
            "workshop.lamp": "dim",
        }
    )
    assert [problem.field for problem in computed] == [
        "safety_use",
        "part.section.2.size",
        "zone.1.wear",
        "load.torque",
        "workshop.lamp",
    ]


@pytest.mark.parametrize(
    "changes",
    [
        {"part.section.0.size": -3},
        {"zone.0.section": [0]},
        {"zone.0.wear": "rubbing"},
        {"part.section": ["round"]},
    ],
)
def test_a_faulty_entry_does_not_also_make_its_list_too_short(changes):
    assert len(problems(changes)) == 1


@pytest.mark.parametrize("key", ["part.section", "zone", "zone.0.section"])
def test_an_empty_list_is_still_too_short(key):
    (problem,) = problems({key: []})
    assert "at least 1 entry" in problem.rule
    assert problem.got == "a list of 0"


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (True, "true"),
        (None, "null"),
        ([1, 2], "a list of 2"),
        ({"a": 1}, "the keys a"),
        (10**30, "a number of more than 18 digits"),
        (0xF << 60_000, "a number of more than 18 digits"),
        ("x" * 500, "..."),
    ],
    ids=["bool", "null", "list", "table", "large", "huge", "long"],
)
def test_what_was_got_fits_on_a_line(value, shown):
    (problem,) = problems({"part.quantity": value})
    assert shown in problem.got
    assert len(problem.got) <= 60


def test_a_long_key_is_cut_short():
    (problem,) = problems({"x" * 10_000: 1})
    assert len(problem.field) <= 60


NO_REQUIREMENT = [None, 3, "text", [], [1], True]


@pytest.mark.parametrize("data", NO_REQUIREMENT, ids=repr)
def test_what_is_no_table_is_refused(data):
    with pytest.raises(
        RequirementError, match="requirement must be a table of keys and values"
    ):
        requirement_from(data)


WORDS = [
    ({"part.quantity": "three"}, "a whole number"),
    ({"part.quantity": 1.5}, "a whole number"),
    ({"limit.budget": "12 EUR"}, "a number"),
    ({"workshop.only_stock": "perhaps"}, "true or false"),
    ({"part.name": 3}, "text"),
    ({"part.name": ""}, "text of at least 1 character"),
    ({"part.name": "x" * 300}, "text of at most 200 characters"),
    ({"part.name": "\ud800"}, "readable text"),
    ({"limit.budget": float("nan")}, "a finite number"),
    ({"limit.budget": 1e30}, "at most 1e+07"),
    ({"workshop.heat": "forge"}, "a list"),
    ({"zone.0.hardness": "50 HRC"}, "a window as a table"),
    ({"zone.0.mate": "iron"}, "a table of keys and values"),
]


@pytest.mark.parametrize(("changes", "rule"), WORDS, ids=[rule for _, rule in WORDS])
def test_rules_are_in_the_words_of_the_workshop(changes, rule):
    (problem,) = problems(changes)
    assert problem.rule == rule
    assert problem.next_step.endswith(".")
    assert "Input should" not in str(problem)
