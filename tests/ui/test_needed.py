from tests.form import field, said


def test_what_the_part_needs_is_said_live(blank):
    for path, value in (("part.section.1.size", "20 mm"), ("part.section.1.length", "60 mm")):
        blank.text_input(key=field(blank, path)).set_value(value).run()
    assert "<svg" in said(blank)
    assert "none is needed" in said(blank)
