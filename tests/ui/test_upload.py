import pytest

from selector.errors import RequirementError
from ui.upload import parsed


def test_toml_and_json_say_the_same():
    toml = parsed("a.toml", b'[part]\nname = "pin"')
    assert toml == parsed("a.JSON", b'{"part": {"name": "pin"}}') == {"part": {"name": "pin"}}


def test_a_null_is_no_answer():
    assert parsed("a.json", b'{"zone": [{"mate": null}]}') == {"zone": [{}]}


def test_a_byte_order_mark_is_no_fault():
    assert parsed("a.toml", b"\xef\xbb\xbfa = 1") == {"a": 1}


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("a.toml", b"a = ", r"file a\.toml must be valid TOML; got Invalid value"),
        ("a.json", b"{", r"file a\.json must be valid JSON; got Expecting property name"),
        ("a.toml", b"\xff\xfe\x00", r"file a\.toml must be valid TOML; got 'utf-8' codec"),
        ("a.json", b"[" * 100_000, r"file a\.json must be valid JSON; got maximum recursion"),
        ("a.json", b"[1]", r"file a\.json must be a requirement; got other contents"),
        ("a.toml", b"", r"file a\.toml must be a requirement; got other contents"),
    ],
)
def test_what_is_no_requirement_is_said(name, content, said):
    with pytest.raises(RequirementError, match=said):
        parsed(name, content)
