import io

import pytest
from rich.console import Console

from catalog import load_catalog
from selector.commands.flame_page import print_flame
from selector.flame import flame_answer
from selector.flame_output import flame_out
from tests.dog import FEW, asked, only

CATALOG = load_catalog()


def page(changes=None, steel=None, catalog=CATALOG):
    answer = flame_answer(asked(changes), catalog, steel)
    text = io.StringIO()
    print_flame(flame_out(answer, catalog), answer, Console(file=text, width=110))
    return text.getvalue()


@pytest.fixture(scope="module")
def whole():
    return page(catalog=only(*FEW))


def test_what_the_owner_asks_is_there(whole):
    for word in ("hard ", "heat ", "gas ", "soft ring", "corners", "temper", "bow ", "N m"):
        assert f"\n   {word}" in whole or word in whole


def test_other_steels_take_a_line_each(whole):
    lines = whole.split("Other steels")[1].split("Cautions")[0]
    assert "817M40" in lines
    assert "no: " in lines
    assert ".." not in lines


def test_a_condition_and_its_change_are_told():
    text = page({"workshop.turns_part": False, "workshop.held_by": "tongs"}, "C45")
    assert "Flame hardening: yes, if" in text
    assert "change     hold and turn the part" in text


def test_a_ceiling_is_told_where_the_heat_is_never_reached():
    big = {f"part.section.{n}.size": 76 for n in (0, 1)}
    text = page({**big, "workshop.heat": [{"source": "hand-torch"}]}, "C45")
    assert "stops at" in text
    assert "nan" not in text
