from tests.form import said


def test_verdict_map_windows_and_demands_stand_there(advised):
    advised.switch_page("views/torch.py").run()
    text = said(advised)
    for mark in ("tw-word", "tw-wide", "tw-band", "tw-three", "tw-others"):
        assert mark in text, mark
    advised.text_input(key="torch/steel").set_value("1.2379").run()
    assert not advised.exception
    advised.text_input(key="torch/steel").set_value("unobtainium").run()
    assert "No steel is called unobtainium" in said(advised)
