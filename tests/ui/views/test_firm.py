from tests.form import said


def test_it_says_how_firm_and_asks_others_on_demand(advised):
    advised.switch_page("views/firm.py").run()
    assert "tw-firm" in said(advised)
    advised.toggle(key="firm/compare").set_value(True).run()
    assert not advised.exception
    assert "first" in said(advised).lower()
