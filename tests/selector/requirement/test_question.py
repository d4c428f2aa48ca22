import pytest

from selector.requirement import Requirement
from selector.requirement.question import question, titled, without_rows


@pytest.mark.parametrize(
    ("path", "title", "kind", "unit_kind"),
    [
        ("safety_use", "What happens if it breaks?", "choice", None),
        ("part.section.2.size", "Size", "quantity", "length"),
        ("part.section", "Sections", "rows", None),
        ("zone.1.hardness", "How hard must it be?", "table", None),
        ("zone.1.hardness.min", "From", "quantity", "hardness"),
        ("load.torque", "Torque", "quantity", "torque"),
        ("limit.budget", "A good part may cost", "number", None),
        ("part.quantity", "How many", "count", None),
        ("workshop.measure", "Heat is judged by", "many", None),
        ("workshop.machine", "Machines", "many", None),
        ("workshop.turns_part", "The part is turned while it is heated", "tick", None),
        ("workshop.stock.1.steel", "Steel", "text", None),
    ],
)
def test_a_field_says_what_it_asks(path, title, kind, unit_kind):
    asked = question(path)
    assert (asked.title, asked.kind, asked.unit_kind) == (title, kind, unit_kind)


def test_what_is_no_field_asks_nothing():
    assert question("part.colour") is None
    assert titled("part.colour") == "part.colour"


def test_answers_defaults_and_need_are_the_models():
    assert question("load.impact").answers == ("none", "light", "hammered")
    assert question("load.impact").needed
    assert question("zone.1.severity").default == "light"


def test_a_row_has_its_number():
    assert titled("part.section.2.size") == "Sections 2: size"
    assert without_rows("zone.2.hardness.min") == "zone.hardness.min"


def titles_missing(schema):
    """Fields of a JSON schema that nobody gave a title of its own."""
    missing = []
    for model, body in schema["$defs"].items():
        for name, field in body.get("properties", {}).items():
            generated = name.replace("_", " ").title()
            if field.get("title", generated) == generated and "$ref" not in field:
                missing.append(f"{model}.{name}")
    return missing


def test_every_field_of_the_schema_has_words():
    plain = set(titles_missing(Requirement.model_json_schema()))
    # Their name is the word, or an element's sign.
    assert {name for name in plain if not name.startswith("Analysis.")} <= {
        "Section.shape", "Section.size", "Section.length", "Section.bore", "Section.width",
        "Section.fillet", "Part.name", "Zone.name", "Load.torque", "Load.bending",
        "Limit.currency", "Skill.scatter", "Stock.steel", "Stock.condition", "Stock.size",
        "Stock.analysis", "Stock.hardness", "Heat.tip", "Bath.volume", "Bath.temperature",
        "Priorities.order", "Priorities.points", "Priorities.pairwise", "Workshop.heat",
            "OwnPrice.steel",
    }  # fmt: skip
