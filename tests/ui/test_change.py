from tests.form import field, said


def test_nothing_passes_and_a_button_makes_the_change(with_claw):
    with_claw.text_input(key=field(with_claw, "load.torque")).set_value("790 N m").run()
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    buttons = [b.key for b in with_claw.button if (b.key or "").startswith("change/")]
    if buttons:
        with_claw.button(key=buttons[0]).click().run()
        assert not with_claw.exception
        assert "The part was changed since" not in said(with_claw)
