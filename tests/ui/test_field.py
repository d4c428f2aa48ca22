import pytest

from selector.requirement import Requirement
from ui.field import BLOCKS, FIELDS, Field


def model_at(place):
    """The field of the requirement a place on the form stands for."""
    model, info = Requirement, None
    for name in place.split("."):
        info = model.model_fields[name]
        model = next(
            (
                inner
                for inner in (info.annotation, *getattr(info.annotation, "__args__", ()))
                if hasattr(inner, "model_fields")
            ),
            _inside(info.annotation),
        )
    return info


def _inside(annotation):
    for inner in getattr(annotation, "__args__", ()):
        if hasattr(inner, "model_fields"):
            return inner
        advice = _inside(inner)
        if advice is not None:
            return advice
    return None


@pytest.mark.parametrize("place", FIELDS)
def test_each_field_is_one_of_the_requirement(place):
    info = model_at(place)
    field = FIELDS[place]
    optional_table = place.startswith(("zone.hardness.", "zone.mate."))
    assert field.needed == info.is_required() or optional_table
    if field.start is not None and not info.is_required():
        assert field.start == info.default


@pytest.mark.parametrize(
    "place", [p for p, f in FIELDS.items() if f.kind in {"choice", "many"}]
)
def test_closed_sets_come_from_the_requirement_or_the_catalogue(place):
    elsewhere = {"workshop.heat.source", "workshop.bath.medium", "zone.section"}
    assert bool(FIELDS[place].choices) == (place not in elsewhere)


def test_no_two_fields_of_a_block_have_one_label():
    for block in BLOCKS:
        names = [field.label for field in block.fields]
        assert len(names) == len(set(names)), block.title


@pytest.mark.parametrize(
    ("kind", "right", "wrong"),
    [
        ("text", "a", 1),
        ("quantity", "1 in", True),
        ("quantity", 2.5, [1]),
        ("number", 2, "2"),
        ("count", 2, 2.5),
        ("tick", True, 1),
        ("choice", "x", "y"),
        ("many", ["x"], ["x", "y"]),
        ("many", [], "x"),
    ],
)
def test_a_widget_holds_its_own_kind_of_answer(kind, right, wrong):
    field = Field("f", "F", kind, choices=("x",))
    assert field.holds(right)
    assert not field.holds(wrong)
