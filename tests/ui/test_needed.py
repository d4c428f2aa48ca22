from tests.form import field, said


def test_what_the_part_needs_is_said_live(blank):
    for path, value in (("part.section.1.size", "20 mm"), ("part.section.1.length", "60 mm")):
        blank.text_input(key=field(blank, path)).set_value(value).run()
    assert "<svg" in said(blank)
    # Nothing is said of hardness as long as nobody has said what wears it.
    assert "none is needed" not in said(blank)
    wear = field(blank, "zone.1.wear")
    blank.selectbox(key=wear).set_value("sliding").run()
    assert "Say what it suffers, and how badly" in said(blank)
    blank.radio(key=field(blank, "zone.1.severity")).set_value("medium").run()
    assert "51 to 61 HRC, 0.1 mm deep, all over" in said(blank)
    blank.selectbox(key=wear).set_value("none").run()
    assert "none is needed" in said(blank)
