from tests.form import said


def test_the_twelve_questions_and_the_drawing_stand_together(with_claw):
    assert [header.value[:1] for header in with_claw.header][:6] == list("123456")
    assert "<svg" in said(with_claw)
