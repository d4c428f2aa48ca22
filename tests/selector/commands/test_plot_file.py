from pathlib import Path

import pytest
from matplotlib.figure import Figure

from selector.commands.plot_file import checked_format, save
from selector.errors import RequirementError


@pytest.mark.parametrize(
    ("name", "start"), [("a.png", b"\x89PNG"), ("a.SVG", b"<?xml"), ("a.pdf", b"%PDF")]
)
def test_it_is_written_as_its_name_ends(tmp_path, name, start):
    path = tmp_path / name
    checked_format(path)
    save(Figure(), path)
    assert path.read_bytes().startswith(start)


def test_another_format_is_refused():
    with pytest.raises(RequirementError, match=r"--plot must be .*\.pdf file; got 'a\.jpg'"):
        save(Figure(), Path("a.jpg"))


def test_a_place_that_cannot_be_written_is_refused(tmp_path):
    with pytest.raises(
        RequirementError, match="--plot must be a file that can be written; got"
    ):
        save(Figure(), tmp_path / "nowhere" / "a.png")
