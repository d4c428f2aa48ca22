import pytest

from tests.form import field


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("a.toml", b"part = [", "Not taken"),
        ("a.toml", b"[part]\nnme = 'x'", "Not taken"),
        ("a.toml", b"part = 5", "Not taken"),
        ("a.toml", b"zone = [5]", "Not taken"),
        ("a.toml", b"[workshop]\nheat = [{ source = 'sun' }]", "Not taken"),
        ("a.json", b'{"workshop": {"turns_part": "perhaps"}}', "Not taken"),
    ],
)
def test_a_wrong_file_is_refused_and_the_form_stays(with_claw, name, content, said):
    with_claw.file_uploader(key="start/file").set_value((name, content, "text/plain")).run()
    assert not with_claw.exception
    assert with_claw.error[0].value.startswith(said)
    assert with_claw.text_input(key=field(with_claw, "part.name")).value == "claw"


def test_a_file_with_a_slip_in_a_text_is_taken_and_the_slip_said(with_claw, claw_text):
    content = claw_text.replace('size = "25 mm"', 'size = "25 mn"', 1).encode()
    with_claw.file_uploader(key="start/file").set_value(("a.toml", content, "text/plain")).run()
    assert not with_claw.exception
    assert "25 mn" in with_claw.error[0].value
    assert with_claw.text_input(key=field(with_claw, "part.section.1.size")).value == "25 mn"
