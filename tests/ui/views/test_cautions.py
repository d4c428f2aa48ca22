from tests.form import field
from ui import labels


def test_each_caution_stands_under_its_step(advised, advice):
    advised.switch_page("views/cautions.py").run()
    titles = [header.value for header in advised.header]
    assert [labels.words(step) for step in dict.fromkeys(c.step for c in advice.cautions)] == [
        title for title in titles if title not in {"A test piece first", "The worst first"}
    ]
    written = "\n".join(text.value for text in advised.markdown)
    assert all(labels.plain(caution.text) in written for caution in advice.cautions)
    worst = min((c for c in advice.cautions if c.first_screen), key=lambda c: c.rank)
    assert titles[0] == "The worst first"
    assert labels.plain(worst.brief) in written


def test_an_unknown_bar_gets_the_plan_of_a_test_piece(with_claw):
    with_claw.button(key="add/workshop.stock").click().run()
    with_claw.text_input(key=field(with_claw, "workshop.stock.1.steel")).set_value(
        "unknown"
    ).run()
    with_claw.checkbox(key=field(with_claw, "workshop.only_stock")).check().run()
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    with_claw.switch_page("views/cautions.py").run()
    assert with_claw.header[0].value == "A test piece first"
