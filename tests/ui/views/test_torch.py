import pytest

from tests.dog import GONE, varied
from tests.form import said
from tests.ui.test_stuck import choice_of


def test_verdict_map_windows_and_demands_stand_there(advised):
    advised.switch_page("views/torch.py").run()
    text = said(advised)
    for mark in ("tw-word", "tw-wide", "tw-band", "tw-three", "tw-others"):
        assert mark in text, mark
    advised.text_input(key="torch/steel").set_value("1.2379").run()
    assert not advised.exception
    advised.text_input(key="torch/steel").set_value("unobtainium").run()
    assert "No steel is called unobtainium" in said(advised)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"workshop.heat": [{"source": "kiln"}]}, "The workshop has no torch or fire"),
        ({"workshop.heat": []}, "The workshop has no torch or fire"),
        ({"zone.0.wear": "none", "zone.0.hardness": GONE}, "Not needed"),
    ],
)
def test_where_no_flame_answers_it_says_why_and_what_to_do_instead(changes, why):
    page = choice_of(varied(changes))
    headline = page.title[0].value
    page.switch_page("views/torch.py").run()
    assert not page.exception
    text = said(page)
    assert why in text
    heads = [head.value for head in page.header]
    assert "Instead of the torch" in heads
    assert headline.partition(";")[0] in text
    # No change was tried where no family was.
    assert "No single change" not in text
