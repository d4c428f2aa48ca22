import pytest

from catalog import CatalogError, load_catalog
from catalog.fault import fault_line


def test_a_fault_of_a_file_is_said_in_one_form(tmp_path):
    (tmp_path / "marks.toml").write_text("[T]\ncondition = 3\nsays = 'x'\n", encoding="utf-8")
    with pytest.raises(CatalogError) as refused:
        load_catalog(tmp_path)
    (line,) = refused.value.problems
    key, rule = "T.condition", line.split(": ")[2].partition(" (got ")[0]
    assert line == fault_line("marks.toml", key, rule, "3")
