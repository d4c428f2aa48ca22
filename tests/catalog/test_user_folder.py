from pathlib import Path

import platformdirs
import pytest

from catalog.user_folder import cache_folder, data_folder, state_folder

FOLDERS = {
    cache_folder: "user_cache_path",
    data_folder: "user_data_path",
    state_folder: "user_state_path",
}


@pytest.mark.parametrize("folder_of", FOLDERS)
def test_each_folder_is_named_after_the_program(folder_of, monkeypatch):
    for kind in ("CACHE", "DATA", "STATE"):
        monkeypatch.setenv(f"XDG_{kind}_HOME", "/of/the/user")
    assert folder_of() == Path("/of/the/user/temperwright")


@pytest.mark.parametrize(("folder_of", "asked"), FOLDERS.items())
def test_an_account_without_a_home_has_none(folder_of, asked, monkeypatch):
    def nowhere(*_, **__):
        raise RuntimeError("could not determine the home directory")

    monkeypatch.setattr(platformdirs, asked, nowhere)
    assert folder_of() is None
