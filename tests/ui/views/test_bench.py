from tests.form import said


def test_every_step_of_the_work_can_be_ticked(advised, advice):
    advised.switch_page("views/bench.py").run()
    steps = advice.options[0].procedure
    assert len(advised.checkbox) == len(steps)
    advised.checkbox[0].check().run()
    assert not advised.exception
    assert "tw-harm" in said(advised)
