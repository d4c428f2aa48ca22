import os
from pathlib import Path

import pytest

from catalog.whole_file import put_in_place


@pytest.mark.parametrize("lasting", [True, False])
def test_a_file_is_replaced_whole_and_only_for_its_user(tmp_path, lasting):
    place = tmp_path / "kept"
    for content in (b"old", b"new"):
        put_in_place(place, content, lasting=lasting)
        assert place.read_bytes() == content
    assert place.stat().st_mode & 0o777 == 0o600
    put_in_place(place, b"for all", mode=0o644)
    assert place.stat().st_mode & 0o777 == 0o644


@pytest.mark.parametrize("step", ["write", "chmod", "replace"])
def test_what_fails_leaves_the_old_file_alone(tmp_path, monkeypatch, step):
    def full(*_, **__):
        raise OSError(28, "No space left on device")

    place = tmp_path / "kept"
    put_in_place(place, b"old")
    if step == "write":
        monkeypatch.setattr(os, "fsync", full)
    else:
        monkeypatch.setattr(Path, step, full)
    with pytest.raises(OSError, match="No space"):
        put_in_place(place, b"new")
    monkeypatch.undo()
    assert place.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [place]
