from tests.form import said
from ui import ways


def test_each_way_can_be_set_against_the_first(advised, advice):
    way = advice.alternatives[-1]
    advised.button(key=f"way/{way.place}").click().run()
    assert not advised.exception
    assert advised.title[0].value == "Head to head"
    assert advised.selectbox(key=ways.RIVAL).value == way.id
    assert "tw-duel" in said(advised)
