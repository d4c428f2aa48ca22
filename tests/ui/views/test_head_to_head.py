from tests.form import said


def test_two_options_are_set_against_each_other(advised):
    advised.switch_page("views/head_to_head.py").run()
    assert not advised.exception
    assert "tw-duel" in said(advised)
    advised.selectbox(key="versus/second").select_index(0).run()
    assert "Choose two that differ" in said(advised)
