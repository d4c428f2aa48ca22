import re

from selector.versus.versus import versus
from tests.dog import FEW, asked, only
from tests.once import advise_once
from ui.duel import by_quantity, sides


def test_both_sides_stand_in_a_line_each_and_a_range_only_where_there_is_one():
    known = only(*FEW)
    first, second = advise_once(asked(), known).options[:2]
    found = versus(asked(), first.id, second.id, known)
    deep = found.first.depth_mm
    sure, wide = (
        deep.model_copy(update={"p05": low, "p50": 14.0, "p95": 14.0}) for low in (14.0, 3.0)
    )
    found = found.model_copy(
        update={
            "first": found.first.model_copy(update={"depth_mm": sure}),
            "second": found.second.model_copy(update={"depth_mm": wide}),
        }
    )
    shown = re.search(r"hard down to</th><td>(.*?)</td><td>(.*?)</td>", sides(found))
    assert shown[1] == "14.0 mm"
    assert "3.0 to 14.0" in shown[2]
    assert by_quantity(found).count("<tr>") == 1 + len(found.quantity)
