"""The shipped examples are there and are sound requirements."""

import tomllib

import pytest

from catalog.example import example_names, example_text
from selector.requirement import requirement_from


def test_there_are_examples_in_order():
    assert example_names()
    assert list(example_names()) == sorted(example_names())


@pytest.mark.parametrize("name", example_names())
def test_every_example_is_a_requirement(name):
    assert requirement_from(tomllib.loads(example_text(name))).part.name


def test_an_unknown_example_is_not_found():
    with pytest.raises(FileNotFoundError, match="no-such-part"):
        example_text("no-such-part")
