from catalog import load_catalog
from selector.job.job import resolved
from selector.job.reach import able
from tests.dog import asked
from tests.form import field, said
from ui.able import table

KNOWN = load_catalog()


def shown(changes=None):
    return table(able(resolved(asked(changes), KNOWN)))


def test_every_route_stands_once_with_its_disc_or_its_reason():
    html = shown({"part.section.1.size": "32 mm"})
    assert (
        "◐</td><th scope='row'>Heated all over by torch or forge</th><td>in warm water" in html
    )
    assert "heats like 32 mm" in html
    assert html.count("Needs a firm, and nothing is to be sent out") == 1
    # Few treatments stand in the open, many behind a line that opens.
    assert "treatments</summary>" in html
    assert "<td>normalise</td>" in html
    assert "by torch to 330\N{NO-BREAK SPACE}°C" in html
    assert "there is nothing to temper by" in shown(
        {"workshop.heat": [{"source": "induction"}]}
    )


def test_nothing_is_said_of_a_workshop_without_heat(blank):
    assert "tw-able" not in said(blank)


def test_it_stands_beside_the_form_and_says_in_one_line_what_is_sent_out(with_claw):
    assert "What this workshop can do with it" in [head.value for head in with_claw.header]
    with_claw.switch_page("views/workshop.py").run()
    with_claw.checkbox(key=field(with_claw, "workshop.subcontract")).check().run()
    with_claw.switch_page("views/part.py").run()
    assert said(with_claw).count("<th scope='row'>Send out</th>") == 1
