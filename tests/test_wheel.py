"""The built wheel holds all data and works away from the checkout. Slow: builds and installs.

The wheel goes into an empty environment of its own; only the dependencies are lent to it, so
that nothing is downloaded.
"""

import importlib.util
import os
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGES = ("catalog", "selector", "ui")
DEPENDENCIES = sysconfig.get_path("purelib")


def run(*command: str | Path, cwd: Path, lent: str = "") -> str:
    """Return what a command prints; its complaint is the reason of a failure."""
    inherited = {key: text for key, text in os.environ.items() if not key.startswith("PYTHON")}
    done = subprocess.run(  # noqa: S603
        [str(part) for part in command],
        cwd=cwd,
        env={**inherited, "PYTHONPATH": lent, "NO_COLOR": "1", "COLUMNS": "100"},
        capture_output=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, f"{command}: {done.stdout}{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def env(tmp_path_factory) -> Path:
    """Return the commands folder of an empty environment with nothing but pip."""
    place = tmp_path_factory.mktemp("empty") / "env"
    run(sys.executable, "-m", "venv", place, cwd=place.parent)
    return place / ("Scripts" if os.name == "nt" else "bin")


@pytest.fixture(scope="module")
def wheel(env, tmp_path_factory) -> Path:
    """Return the wheel, built by the backend at hand, else by one that pip fetches."""
    place = tmp_path_factory.mktemp("dist")
    at_hand = importlib.util.find_spec("hatchling") is not None
    isolation = ["--no-build-isolation"] if at_hand else []
    lent = DEPENDENCIES if at_hand else ""
    command = (env / "python", "-m", "pip", "wheel", "--no-deps", *isolation, "-w", place, ROOT)
    run(*command, cwd=place, lent=lent)
    (built,) = place.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(env, wheel) -> Path:
    """Return the commands folder with the wheel installed and the dependencies lent."""
    pip = (env / "python", "-m", "pip", "install", "--no-deps", "--no-index", wheel)
    run(*pip, cwd=wheel.parent)
    ask = "import sysconfig; print(sysconfig.get_path('purelib'))"
    site = Path(run(env / "python", "-c", ask, cwd=wheel.parent).strip())
    (site / "lent.pth").write_text(DEPENDENCIES, encoding="utf-8")
    return env


def shipped() -> set[str]:
    """Return every source and data file that the wheel must hold."""
    return {
        path.relative_to(ROOT).as_posix()
        for package in PACKAGES
        for path in (ROOT / package).rglob("*")
        if path.is_file() and path.suffix in {".py", ".toml"}
    }


def test_the_wheel_holds_every_source_and_data_file(wheel):
    held = set(zipfile.ZipFile(wheel).namelist())
    assert shipped() - held == set()


def test_the_wheel_holds_the_kinds_of_data_it_lives_on(wheel):
    held = zipfile.ZipFile(wheel).namelist()
    for folder in ("catalog/steels/", "catalog/routes/", "catalog/examples/", "selector/"):
        assert any(name.startswith(folder) and name.endswith(".toml") for name in held), folder
    assert "ui/app.py" in held


def test_the_wheel_holds_nothing_else(wheel):
    tops = {name.split("/")[0] for name in zipfile.ZipFile(wheel).namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == set(PACKAGES)


def test_the_installed_packages_are_those_of_the_wheel(installed, tmp_path):
    ask = (
        "import catalog, selector, ui; print(catalog.__file__, selector.__file__, ui.__file__)"
    )
    for place in run(installed / "python", "-c", ask, cwd=tmp_path).split():
        assert Path(place).is_relative_to(installed.parent)


def test_the_catalogue_is_sound_where_it_is_installed(installed, tmp_path):
    assert "no fault found" in run(installed / "temperwright", "check", cwd=tmp_path)
    assert "115CrV3" in run(installed / "temperwright", "steels", "silver", cwd=tmp_path)


def test_the_main_job_runs_where_it_is_installed(installed, tmp_path):
    example = run(installed / "temperwright", "example", cwd=tmp_path)
    (tmp_path / "part.toml").write_text(example, encoding="utf-8")
    advice = run(installed / "temperwright", "advise", "part.toml", cwd=tmp_path)
    assert "HRC" in advice
