import pytest
from typer.main import get_command

from selector.commands import cli as commands
from selector.commands.given import AsJson, CatalogFolders

JSON, FOLDERS = AsJson.__metadata__[0], CatalogFolders.__metadata__[0]


@pytest.mark.parametrize(
    "name", ["advise", "flame", "need", "versus", "temper", "quench", "steels", "routes"]
)
def test_commands_share_their_options(name):
    options = {option.name: option for option in get_command(commands).commands[name].params}
    assert options["as_json"].help == JSON.help
    assert options["as_json"].opts == ["--json"]
    assert options["catalog"].help == FOLDERS.help
    assert options["catalog"].multiple
