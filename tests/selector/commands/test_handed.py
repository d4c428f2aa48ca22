from datetime import date

from selector.commands.handed import hand_over


def test_a_sheet_is_written_with_a_date_and_a_version_and_what_it_lacks_is_said(
    tmp_path, monkeypatch, capsys
):
    monkeypatch.setattr("selector.handover.fonts._folder", lambda _: None)
    told = []

    def data(today, version):
        told.extend((today, version))
        return {
            "title": "t",
            "subtitle": "s",
            "picture": None,
            "paragraphs": [],
            "foot": [""] * 3,
        }

    hand_over("paragraph", data, tmp_path / "t.pdf", "a4")
    assert isinstance(told[0], date)
    assert told[1]
    assert "not found: the sheet is set in other letters" in capsys.readouterr().err
    assert (tmp_path / "t.pdf").read_bytes().startswith(b"%PDF")
