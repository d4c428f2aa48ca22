import pytest

from catalog.load import SHIPPED
from selector.commands import cli as commands

C45 = (SHIPPED / "steels" / "c45.toml").read_text(encoding="utf-8")


@pytest.fixture
def mine(tmp_path):
    """Return a folder that overlays one steel."""

    def write(text):
        (tmp_path / "steels").mkdir()
        (tmp_path / "steels" / "c45.toml").write_text(text, encoding="utf-8")
        return str(tmp_path)

    return write


def test_the_shipped_catalogue_is_sound(cli, catalog):
    done = cli.invoke(commands, ["check"])
    assert done.exit_code == 0, done.output
    assert done.stdout.startswith(f"{len(catalog.steels)} steels, {len(catalog.routes)} routes")
    assert "no fault found" in done.stdout


def test_a_sound_folder_over_it_is_sound(cli, mine):
    done = cli.invoke(commands, ["check", mine(C45)])
    assert done.exit_code == 0, done.output


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (C45.replace('name = "C45', 'nam = "C45', 1), "c45.toml: nam:"),
        (C45.replace("family = ", 'family = "nowhere" # '), "c45.toml: family:"),
        ("not toml", "c45.toml: (whole file): must be UTF-8 TOML"),
    ],
    ids=["unknown key", "unknown family", "not TOML"],
)
def test_a_fault_names_file_and_key(cli, mine, text, said):
    done = cli.invoke(commands, ["check", mine(text)])
    assert done.exit_code == 2
    assert said in done.stderr
    assert done.stdout == ""


def test_a_missing_folder(cli, tmp_path):
    done = cli.invoke(commands, ["check", str(tmp_path / "none")])
    assert done.exit_code == 2
    assert "folder must exist" in done.stderr


@pytest.fixture
def oil(tmp_path):
    """Return a folder that overlays one medium."""

    def write(was, now):
        (tmp_path / "media").mkdir()
        text = (SHIPPED / "media" / "oil.toml").read_text(encoding="utf-8")
        assert was in text
        (tmp_path / "media" / "oil.toml").write_text(text.replace(was, now), encoding="utf-8")
        return str(tmp_path)

    return write


def test_what_nothing_reads_of_a_folder_is_said_with_the_reason(cli, oil):
    done = cli.invoke(commands, ["check", oil("value = 170", "value = 230")])
    assert done.exit_code == 0, done.output
    summary, *unread = done.stdout.splitlines()
    assert "no fault found" in summary
    reason = "its caution states the rule; no bath is judged by it"
    assert unread == [f"oil.toml: flash_point_c: nothing reads it: {reason}"]


@pytest.mark.parametrize(
    ("was", "now"),
    [("min = 0.35", "min = 0.3"), ("typical mineral quench oil", "my oil"), ("name", "name")],
    ids=["read by an answer", "where it comes from", "as shipped"],
)
def test_what_is_read_or_as_shipped_is_not_mentioned(cli, oil, was, now):
    done = cli.invoke(commands, ["check", oil(was, now)])
    assert done.exit_code == 0, done.output
    assert "nothing reads it" not in done.stdout


def test_coverage_says_what_lacks_and_what_is_done_without(cli):
    said = cli.invoke(commands, ["check", "--coverage"]).stdout
    assert "values that its own routes ask of a steel are there" in said
    assert "Service in frost: " in said
    assert "Read in print: " in said


def test_coverage_says_what_is_done_without_a_value(cli, tmp_path):
    (tmp_path / "steels").mkdir()
    poorer = "".join(
        line + chr(10) for line in C45.splitlines() if not line.startswith("anneal")
    )
    (tmp_path / "steels" / "c45.toml").write_text(poorer, encoding="utf-8")
    said = cli.invoke(commands, ["check", str(tmp_path), "--coverage"]).stdout
    assert "c45: temperature_c.anneal: not there; a hard part is softened at one" in said


def test_faults_of_one_file_and_between_files_come_at_once(cli, tmp_path):
    (tmp_path / "steels").mkdir()
    broken = C45.replace('name = "C45', 'nam = "C45', 1)
    lost = C45.replace('source = "lucefin-cards"', 'source = "no-such-card"')
    (tmp_path / "steels" / "mine.toml").write_text(broken, encoding="utf-8")
    (tmp_path / "steels" / "c45.toml").write_text(lost, encoding="utf-8")
    said = cli.invoke(commands, ["check", str(tmp_path)]).stderr
    assert "mine.toml: nam: must be a field of this file" in said
    assert "c45.toml: composition_wt_pct.C.source: must be a key of sources.toml" in said
