import tomllib

import pytest

from catalog import CatalogError
from catalog.template import write_template


def test_the_template_is_toml_under_a_name_of_its_own(tmp_path):
    path = write_template("EN 24, mill 7", tmp_path)
    assert path == tmp_path / "steels" / "en-24-mill-7.toml"
    assert tomllib.loads(path.read_text(encoding="utf-8"))["name"] == "EN 24, mill 7"


@pytest.mark.parametrize("name", ["", "//", 'a "b"', "a\x1bb"])
def test_a_name_that_makes_no_file_is_refused(tmp_path, name):
    with pytest.raises(CatalogError, match="must be a name"):
        write_template(name, tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_is_there_is_left_alone(tmp_path):
    write_template("Bar", tmp_path).write_text("mine", encoding="utf-8")
    with pytest.raises(CatalogError, match="must not be there yet"):
        write_template("Bar", tmp_path)
    assert (tmp_path / "steels" / "bar.toml").read_text(encoding="utf-8") == "mine"


def test_a_folder_that_takes_no_file_is_refused(tmp_path):
    (tmp_path / "own").write_text("a file where the folder should be", encoding="utf-8")
    with pytest.raises(CatalogError, match="--into: must be a folder that takes files"):
        write_template("Bar", tmp_path / "own")
