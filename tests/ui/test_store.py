import json

from ui import store


def test_what_is_kept_is_found_again(own_folder):
    key = store.new_id()
    assert store.is_id(key)
    store.keep_part(key, {"draft": {"part": {"name": "pin"}}})
    assert store.part(key) == {"draft": {"part": {"name": "pin"}}}
    assert [found for found, _ in store.latest_parts(5)] == [key]
    assert list((own_folder / "temperwright").glob("part-*.json"))


def test_an_id_leads_nowhere_else():
    for text in ("../../etc/passwd", "", "zzzzzzzzzzzz", "0" * 13):
        assert not store.is_id(text)
        assert store.part(text) is None


def test_a_damaged_file_is_as_none(own_folder):
    key = store.new_id()
    store.keep_part(key, {"draft": {}})
    file = own_folder / "temperwright" / f"part-{key}.json"
    for damage in ("", "{", "[1]", "[" * 100_000):
        file.write_text(damage)
        assert store.part(key) is None


def test_workshops_are_kept_by_name_the_last_first():
    store.keep_workshop("shed", {"heat": []})
    store.keep_workshop("toolroom", {"heat": [{"source": "furnace"}]})
    assert list(store.workshops()) == ["toolroom", "shed"]
    store.keep_workshop("shed", {"heat": [{"source": "oxy-propane"}]})
    assert list(store.workshops()) == ["shed", "toolroom"]
    store.forget_workshop("shed")
    assert list(store.workshops()) == ["toolroom"]


def test_without_a_folder_the_page_goes_on(own_folder):
    (own_folder / "temperwright").write_text("no folder")
    key = store.new_id()
    store.keep_part(key, {"draft": {"part": {}}})
    assert store.part(key) == {"draft": {"part": {}}}
    assert json.loads(store._unwritten[f"part-{key}.json"])


def test_a_part_knows_when_it_was_changed():
    key = store.new_id()
    assert store.changed_at(key) is None
    store.keep_part(key, {"draft": {}})
    assert store.changed_at(key).year >= 2025


def test_an_account_without_a_home_keeps_a_part_for_the_run(monkeypatch):
    monkeypatch.setattr(store, "data_folder", lambda: None)
    key = store.new_id()
    assert store.part(key) is None
    store.keep_part(key, {"draft": {}})
    assert store.part(key) == {"draft": {}}
