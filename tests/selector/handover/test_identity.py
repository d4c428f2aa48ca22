import pytest

from selector.errors import RequirementError
from selector.handover.identity import MOST_BYTES, read_identity, read_logo

SHOP = """
name = "Hollow Lane Workshop (invented)"
address = ["1 Hollow Lane", "Nowhere"]
mail = "bench@example.org"
logo = "mark.svg"
terms = ["Payment within 30 days."]
"""
MARK = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle r="9"/></svg>'


@pytest.fixture
def shop(tmp_path):
    place = tmp_path / "workshop.toml"
    place.write_text(SHOP, encoding="utf-8")
    (tmp_path / "mark.svg").write_text(MARK, encoding="utf-8")
    return place


def test_an_identity_is_read_with_its_logo(shop):
    given = read_identity(shop)
    assert given.address == ("1 Hollow Lane", "Nowhere")
    logo = read_logo(given.logo)
    assert logo.kind == "svg"
    assert logo.for_sheet()["link"].startswith("data:image/svg+xml;base64,")


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"no picture", "logo must be a picture; got mark.svg"),
        (b"\x89PNG\r\n\x1a\ncut off", "logo must be a picture that can be shown"),
        (
            b"<svg xmlns='http://www.w3.org/2000/svg'",
            "logo must be a picture that can be shown",
        ),
        (b"\x89PNG\r\n\x1a\n" + bytes(50_000_000), "logo must be less than 1 MB; got mark.svg"),
    ],
)
def test_a_logo_that_is_none_is_refused(shop, content, said):
    (shop.parent / "mark.svg").write_bytes(content)
    with pytest.raises(RequirementError, match=said):
        read_logo(read_identity(shop).logo)
    assert MOST_BYTES < 50_000_000


def test_a_logo_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(RequirementError, match=r"logo must be a file that can be read"):
        read_logo(tmp_path / "none.png")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("name = ", "--workshop must be TOML"),
        ("address = []", r"workshop.toml: name must be"),
        ('name = "a"\nweb = "x"', r"workshop.toml: web must be"),
        ('name = "a\\u001b[31m"', "one line without control characters"),
        (f'name = "{"x" * 400}"', "name must be .*120 characters"),
        ("#" * 300_000, "a short TOML file"),
    ],
)
def test_a_workshop_file_that_breaks_a_rule_is_refused(tmp_path, text, said):
    place = tmp_path / "workshop.toml"
    place.write_text(text, encoding="utf-8")
    with pytest.raises(RequirementError, match=said):
        read_identity(place)


def test_a_workshop_file_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(
        RequirementError, match="--workshop must be a TOML file that can be read"
    ):
        read_identity(tmp_path / "none.toml")
    (tmp_path / "bytes.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(RequirementError, match="not UTF-8 text"):
        read_identity(tmp_path / "bytes.toml")
