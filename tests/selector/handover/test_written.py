import errno
import os
from pathlib import Path

import pytest

from selector.errors import RequirementError
from selector.handover.written import write_whole


def test_a_file_is_replaced_whole(tmp_path):
    place = tmp_path / "card.pdf"
    write_whole(place, b"old")
    place.chmod(0o640)
    write_whole(place, b"new")
    assert place.read_bytes() == b"new"
    assert place.stat().st_mode & 0o777 == 0o640
    assert list(tmp_path.iterdir()) == [place]


def test_a_link_stays_a_link(tmp_path):
    real, link = tmp_path / "real.pdf", tmp_path / "card.pdf"
    real.write_bytes(b"old")
    link.symlink_to(real)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert real.read_bytes() == b"new"


def full(*_: object) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_a_full_disk_leaves_the_old_file(tmp_path, monkeypatch):
    place = tmp_path / "card.pdf"
    place.write_bytes(b"old")
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(
        RequirementError, match=r"--out must be a file that can be written.*No space"
    ):
        write_whole(place, b"new")
    assert place.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [place]


def test_a_folder_that_takes_nothing_is_refused(tmp_path):
    with pytest.raises(RequirementError, match="No such file or directory"):
        write_whole(tmp_path / "missing" / "card.pdf", b"new")
    with pytest.raises(RequirementError, match="no plain file"):
        write_whole(tmp_path, b"new")
    with pytest.raises(RequirementError, match="no plain file"):
        write_whole(Path(os.devnull), b"new")
    with pytest.raises(RequirementError, match="can be written"):
        write_whole(tmp_path / ("x" * 400 + ".pdf"), b"new")
    with pytest.raises(RequirementError, match="null byte"):
        write_whole(tmp_path / "a\x00.pdf", b"new")


@pytest.mark.skipif(os.geteuid() == 0, reason="root writes anywhere")
def test_a_read_only_folder_is_refused(tmp_path):
    tmp_path.chmod(0o500)
    with pytest.raises(RequirementError, match="Permission denied"):
        write_whole(tmp_path / "card.pdf", b"new")
