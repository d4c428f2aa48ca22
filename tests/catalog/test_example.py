"""The shipped examples are there and are sound requirements."""

import tomllib

import pytest

from catalog.example import FIRST, example_names, example_text
from catalog.load import SHIPPED
from selector.requirement import requirement_from


def test_the_usual_start_comes_first_and_every_file_once():
    first, *others = example_names()
    assert first == FIRST
    assert others == sorted(others)
    assert {first, *others} == {path.stem for path in (SHIPPED / "examples").glob("*.toml")}
    assert len(others) >= 1


@pytest.mark.parametrize("name", example_names())
def test_every_example_is_a_requirement(name):
    assert requirement_from(tomllib.loads(example_text(name))).part.name


def test_an_unknown_example_is_not_found():
    with pytest.raises(FileNotFoundError, match="no-such-part"):
        example_text("no-such-part")
