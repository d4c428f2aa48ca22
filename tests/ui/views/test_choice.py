import json

from selector.wording import shown_spread
from tests.form import field
from ui import cached, labels


def test_requirement_to_ranking_to_one_option(advised, advice):
    ranked = advised.table[1].value
    assert ranked["Surface hardness"].iloc[0] == shown_spread(
        advice.options[0].hardness.surface
    )
    third = advice.options[2]
    advised.selectbox(key="choice/option").select(labels.option(third)).run()
    assert not advised.exception
    predicted = advised.table[2].value
    assert predicted.iloc[0, 1] == shown_spread(third.hardness.surface)
    assert any(labels.plain(third.chief_risk) in text.value for text in advised.markdown)


def test_the_headline_is_the_selectors(advised, advice):
    assert any(labels.plain(advice.headline) in text.value for text in advised.markdown)
    assert any(
        labels.plain(labels.upper(advice.why_first)) in text.value for text in advised.markdown
    )


def test_all_options_can_be_shown(advised, advice):
    assert len(advised.table[1].value) == 10
    advised.toggle(key="choice/all").set_value(True).run()
    assert len(advised.table[1].value) == len(advice.options)


def test_the_chart_changes_its_upright_axis(advised):
    advised.radio(key="choice/against").set_value("hardness").run()
    assert not advised.exception
    chart = advised.get("vega_lite_chart")[0]
    fields = {
        layer["encoding"]["y"].get("field")
        for layer in json.loads(chart.proto.spec)["layer"]
        if "y" in layer["encoding"]
    }
    assert "hardness" in fields
    assert "chance" not in fields


def test_where_nothing_is_left_the_page_leads_to_what_binds(with_claw, advice, monkeypatch):
    empty = advice.model_copy(update={"options": (), "verdict": "no_option", "why_first": None})
    monkeypatch.setattr(cached, "advise", lambda *_args, **_kwargs: None)
    monkeypatch.setattr(cached, "advice_out", lambda _advice: empty)
    with_claw.text_input(key=field(with_claw, "part.section.1.size")).set_value("26 mm").run()
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert "No option" in with_claw.markdown[0].value
    assert [header.value for header in with_claw.header] == []
