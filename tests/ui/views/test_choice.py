import re

from tests.form import said


def test_headline_figures_ways_and_list_are_the_selectors(advised, advice):
    text = said(advised)
    first = advice.options[0]
    assert first.spoken in advised.title[0].value.replace("\\", "")
    assert f"{first.cost.spread.p50:.0f}" in re.search(r"a good part</div>.*?</div>", text)[0]
    assert text.count("class='tw-way") == 1 + len(advice.alternatives)
    assert text.count("c-place") == len(advice.options)
