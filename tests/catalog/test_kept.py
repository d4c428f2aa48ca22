"""The catalogue kept on disk: the same as read, and never a reason to fail."""

import pytest

from catalog import kept, load


@pytest.fixture
def place(tmp_path, monkeypatch):
    """Return where it is kept, in a folder of the test's own."""
    monkeypatch.setattr(kept, "cache_folder", lambda: tmp_path)
    load._load.cache_clear()
    yield tmp_path / "catalogue"
    load._load.cache_clear()


def loaded_again():
    load._load.cache_clear()
    return load.load_catalog()


def unread(monkeypatch):
    monkeypatch.setattr(load, "_read", lambda folders: pytest.fail(f"read {folders} again"))


def test_what_is_kept_is_what_was_read(place, monkeypatch):
    read = load.load_catalog()
    assert place.exists()
    unread(monkeypatch)
    assert loaded_again() == read


@pytest.fixture
def folder(tmp_path):
    """Return a folder with one file, which is sooner read than the whole catalogue."""
    made = tmp_path / "folder"
    made.mkdir()
    (made / "one.toml").write_text("a = 1", encoding="utf-8")
    return made


@pytest.mark.parametrize(
    "damage",
    [
        lambda held: held[: len(held) // 2],
        lambda _: b"",
        lambda held: held[:-9] + b"\0" * 9,
        lambda held: held.replace(b"K\x01", b"K\x09"),  # a sound record of another number
    ],
    ids=["half", "empty", "torn end", "another number"],
)
def test_a_damaged_file_is_read_past_and_made_anew(place, folder, damage):
    assert kept.kept(folder, lambda: {"a": 1}) == {"a": 1}
    place.write_bytes(damage(place.read_bytes()))
    assert kept.kept(folder, lambda: {"a": 2}) == {"a": 2}
    assert kept.kept(folder, lambda: {"a": 3}) == {"a": 2}


@pytest.mark.usefixtures("place")
def test_a_changed_file_is_read_anew(folder):
    assert kept.kept(folder, lambda: {"a": 1}) == {"a": 1}
    assert kept.kept(folder, lambda: {"a": 2}) == {"a": 1}
    (folder / "one.toml").write_text("a = 2", encoding="utf-8")
    assert kept.kept(folder, lambda: {"a": 2}) == {"a": 2}


@pytest.mark.usefixtures("place")
def test_without_a_place_it_is_read(monkeypatch):
    monkeypatch.setattr(kept, "cache_folder", lambda: None)
    assert load.load_catalog().steels


@pytest.mark.usefixtures("place")
def test_a_folder_of_the_user_is_always_read(tmp_path):
    load.load_catalog()
    (tmp_path / "own" / "media").mkdir(parents=True)
    shipped = (load.SHIPPED / "media" / "oil.toml").read_text(encoding="utf-8")
    (tmp_path / "own" / "media" / "oil.toml").write_text(
        shipped.replace('name = "', 'name = "My '), encoding="utf-8"
    )
    assert load.load_catalog(tmp_path / "own").media["oil"].name.startswith("My ")
