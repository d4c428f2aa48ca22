import itertools

import pytest
from streamlit import net_util

from tests.dog import TEXT
from ui import cached, meanwhile, opening, serve, store
from ui.inward import stay_inside


@pytest.mark.parametrize(
    ("host", "hosts"),
    [
        ("127.0.0.1", {"localhost", "127.0.0.1", "[::1]"}),
        ("::", {"*"}),
    ],
)
def test_only_its_own_names_are_answered(host, hosts):
    given = serve.settings(8501, host)
    pairs = list(itertools.pairwise(given))
    assert {value for key, value in pairs if key == "--server.allowedHosts"} == hosts
    assert ("--server.address", host) in pairs
    assert ("--browser.gatherUsageStats", "false") in pairs


def test_no_address_is_asked_for_outside(monkeypatch):
    monkeypatch.setattr(net_util, "get_external_ip", net_util.get_external_ip)
    monkeypatch.setattr(net_util, "get_internal_ip", net_util.get_internal_ip)
    monkeypatch.setattr(net_util, "_make_blocking_http_get", pytest.fail)
    stay_inside()
    assert net_util.get_external_ip() is None
    assert net_util.get_internal_ip() is None


def test_the_catalogue_and_the_units_are_read_ahead(monkeypatch):
    read, sizes = [], []
    monkeypatch.setattr(cached, "load_catalog", lambda *folders: read.append(folders))
    monkeypatch.setattr(meanwhile, "so_far", sizes.append)
    serve.load_ahead()
    assert read == [()]
    assert sizes[0]["part"]["section"]


def test_a_file_named_at_the_start_is_kept_under_its_id(tmp_path):
    file = tmp_path / "dog.toml"
    file.write_text(TEXT)
    assert store.part(opening.kept_file(file))["draft"]["part"]["name"] == "drive dog"
