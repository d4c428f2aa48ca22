import pytest

from catalog.example import example_names
from selector.commands import cli as commands
from selector.requirement import read_requirement


@pytest.fixture
def printed(cli, tmp_path):
    """Return the requirement read back from what a command printed."""

    def read(*args):
        done = cli.invoke(commands, ["example", *args])
        assert done.exit_code == 0, done.output
        path = tmp_path / "example.toml"
        path.write_bytes(done.stdout_bytes)
        return read_requirement(path)

    return read


@pytest.mark.parametrize("name", example_names())
def test_what_is_printed_is_a_sound_requirement(printed, name):
    assert printed(name).part.name


def test_without_a_name_the_first_is_printed(printed):
    assert printed() == printed(example_names()[0])


def test_list_names_them_all(cli):
    done = cli.invoke(commands, ["example", "--list"])
    assert tuple(done.stdout.split()) == example_names()
    assert len(example_names()) >= 1


def test_an_unknown_name_is_refused_with_the_known_ones(cli):
    done = cli.invoke(commands, ["example", "teapot"])
    assert done.exit_code == 2
    assert done.stderr.startswith("example must be a shipped one; got 'teapot'. Choose one of:")
    assert example_names()[0] in done.stderr
