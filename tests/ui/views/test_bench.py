from tests.form import said


def test_every_step_of_the_work_can_be_ticked(advised, advice):
    advised.switch_page("views/bench.py").run()
    steps = advice.options[0].procedure
    assert len(advised.checkbox) == len(steps)
    advised.checkbox[0].check().run()
    assert not advised.exception
    assert "tw-harm" in said(advised)


def test_a_tick_counts_for_the_part_as_it_was_alone(advised):
    advised.switch_page("views/bench.py").run()
    advised.checkbox[0].check().run()
    mark = session_mark(advised)
    advised.switch_page("views/part.py").run()
    advised.switch_page("views/bench.py").run()
    assert advised.checkbox[0].value
    advised.session_state["visit"].asked["part"]["quantity"] = 2
    advised.run()
    assert session_mark(advised) != mark
    assert not advised.checkbox[0].value


def session_mark(page):
    return page.checkbox[0].key.split("/")[1]
