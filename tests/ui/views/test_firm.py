from selector.requirement import requirement_from
from tests.form import said
from ui import cached
from ui.labels import plain


def test_it_says_how_firm_and_asks_others_on_demand(advised):
    advised.switch_page("views/firm.py").run()
    assert "tw-firm" in said(advised)
    advised.toggle(key="firm/compare").set_value(True).run()
    assert not advised.exception
    assert "first" in said(advised).lower()


def test_who_beats_those_before_it_is_explained(advised, claw):
    advised.switch_page("views/firm.py").run()
    found = cached.firmness(requirement_from(claw))
    assert found is not None
    assert found.against_shares
    for text in (found.sentence, *found.against_shares):
        assert plain(text[1:]) in said(advised)
