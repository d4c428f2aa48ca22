"""The built wheel holds all data and works away from the checkout. Slow: builds and installs.

The wheel goes into an empty environment of its own; only what is not ours is lent to it, so
that nothing is downloaded: pip, the dependencies, and kernels already compiled.
"""

import importlib.util
import os
import shutil
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


def at_hand(name: str) -> bool:
    """Return whether a module is there to be lent."""
    return importlib.util.find_spec(name) is not None


@pytest.fixture(scope="module")
def env(tmp_path_factory) -> Path:
    """Return the commands folder of an empty environment, with a pip of its own if need be."""
    place = tmp_path_factory.mktemp("empty") / "env"
    bare = ["--without-pip"] if at_hand("pip") else []
    run(sys.executable, "-m", "venv", *bare, place, cwd=place.parent)
    return place / ("Scripts" if os.name == "nt" else "bin")


def pip(env: Path, *arguments: str | Path, cwd: Path, lent: str = "") -> None:
    """Run pip on an environment: the one at hand, else the environment's own."""
    own = (env / "python", "-m", "pip")
    command = (
        (sys.executable, "-m", "pip", "--python", env / "python") if at_hand("pip") else own
    )
    run(*command, *arguments, cwd=cwd, lent=lent)


def lend_kernels(site: Path) -> None:
    """Lend the compiled kernels; numba knows them by the age of their source."""
    for source in (ROOT / "selector" / "heat").glob("*.py"):
        kept = source.parent / "__pycache__"
        installed = site / source.relative_to(ROOT)
        for kernel in (*kept.glob(f"{source.stem}.*.nbi"), *kept.glob(f"{source.stem}.*.nbc")):
            shutil.copy(kernel, installed.parent / "__pycache__" / kernel.name)
            shutil.copystat(source, installed)


@pytest.fixture(scope="module")
def wheel(env, tmp_path_factory) -> Path:
    """Return the wheel, built by the backend at hand, else by one that pip fetches."""
    place = tmp_path_factory.mktemp("dist")
    lendable = at_hand("hatchling")
    isolation = ["--no-build-isolation"] if lendable else []
    lent = DEPENDENCIES if lendable else ""
    pip(env, "wheel", "--no-deps", *isolation, "-w", place, ROOT, cwd=place, lent=lent)
    (built,) = place.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(env, wheel) -> Path:
    """Return the commands folder with the wheel installed and the dependencies lent."""
    pip(env, "install", "--no-deps", "--no-index", wheel, cwd=wheel.parent)
    ask = "import sysconfig; print(sysconfig.get_path('purelib'))"
    site = Path(run(env / "python", "-c", ask, cwd=wheel.parent).strip())
    (site / "lent.pth").write_text(DEPENDENCIES, encoding="utf-8")
    lend_kernels(site)
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
