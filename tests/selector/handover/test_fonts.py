from selector.handover.fonts import FAMILIES, fonts, read


def test_the_fonts_are_there():
    there = fonts()
    assert there.remark is None
    assert len(there.folders) == 2


def test_a_missing_family_is_named(monkeypatch):
    monkeypatch.setitem(
        __import__("selector.handover.fonts", fromlist=["FAMILIES"]).FAMILIES,
        "font_of_nobody",
        "Nobody Sans",
    )
    assert fonts().remark == (
        "Nobody Sans not found: the sheet is set in other letters. Install font-of-nobody."
    )


def test_they_are_read_once_and_hold_both_families():
    there = read(fonts().folders)
    assert there is read(fonts().folders)
    assert set(FAMILIES.values()) <= set(there.families())
    assert not set(FAMILIES.values()) & set(read().families())
