"""A small shop: parts that are quick to work out, because only two bars lie in the rack."""

from pathlib import Path

import pytest

from selector.batch.answer import answered
from selector.batch.listing import listed
from selector.batch.overlay import Overlay
from selector.batch.program import program

PART = """
safety_use = "could hurt"
[part]
name = "{name}"
[[part.section]]
shape = "round"
size = "{size} mm"
length = "40 mm"
[[zone]]
section = [1]
wear = "sliding"
severity = "medium"
hardness = {{ min = "{low} HRC", max = "{high} HRC" }}
[load]
impact = "light"
cycles = "occasional"
[workshop]
heat = [{{ source = "muffle-furnace" }}, {{ source = "kitchen-oven" }}]
bath = [{{ medium = "oil" }}]
only_stock = true
stock = [{{ steel = "42CrMo4" }}, {{ steel = "O1" }}]
"""
MADE = (("pin", 10, 50, 56), ("bush", 20, 48, 54), ("punch", 12, 56, 62), ("key", 15, 50, 56))


def text_of(name: str = "pin", size: int = 10, low: int = 50, high: int = 56) -> str:
    """Return the file of a part."""
    return PART.format(name=name, size=size, low=low, high=high)


def here(tasks, overlay):
    """Work parts out one after the other in this process."""
    for task in tasks:
        yield task, answered(task, overlay, program())


@pytest.fixture
def shop(tmp_path) -> Path:
    """Return a folder with four sound parts."""
    folder = tmp_path / "parts"
    folder.mkdir()
    for made in MADE:
        (folder / f"{made[0]}.toml").write_text(text_of(*made), encoding="utf-8")
    return folder


@pytest.fixture(scope="session")
def answers(tmp_path_factory) -> dict[str, bytes]:
    """Return what is kept of the four parts, worked out in this process."""
    folder = tmp_path_factory.mktemp("answers")
    for made in MADE:
        (folder / f"{made[0]}.toml").write_text(text_of(*made), encoding="utf-8")
    return {task.place: content for task, content in here(listed(folder), Overlay())}
