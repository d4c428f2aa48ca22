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
# What `python -m` runs, and all that its folder holds.
MODULE = "temperwright"
MOVED = {"selector/commands/__main__.py": f"{MODULE}/__main__.py"}
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


def empty(folder: Path) -> Path:
    """Return the commands folder of an empty environment, with a pip of its own if need be."""
    place = folder / "env"
    bare = ["--without-pip"] if at_hand("pip") else []
    run(sys.executable, "-m", "venv", *bare, place, cwd=folder)
    return place / ("Scripts" if os.name == "nt" else "bin")


@pytest.fixture(scope="module")
def env(tmp_path_factory) -> Path:
    return empty(tmp_path_factory.mktemp("empty"))


def pip(env: Path, *arguments: str | Path, cwd: Path, lent: str = "") -> None:
    """Run pip on an environment: the one at hand, else the environment's own."""
    own = (env / "python", "-m", "pip")
    command = (
        (sys.executable, "-m", "pip", "--python", env / "python") if at_hand("pip") else own
    )
    run(*command, *arguments, cwd=cwd, lent=lent)


def build(env: Path, *arguments: str | Path, cwd: Path) -> None:
    """Run pip with the build backend at hand, else with one that it fetches."""
    lendable = at_hand("hatchling") and at_hand("editables")
    isolation = ["--no-build-isolation"] if lendable else []
    lent = DEPENDENCIES if lendable else ""
    command, *rest = arguments
    pip(env, command, "--no-deps", *isolation, *rest, cwd=cwd, lent=lent)


def lend_kernels(site: Path) -> None:
    """Lend the compiled kernels, which hold for the same sources anywhere."""
    for source in (ROOT / "selector" / "heat").glob("*.py"):
        kept = source.parent / "__pycache__"
        installed = site / source.relative_to(ROOT)
        for kernel in (*kept.glob(f"{source.stem}.*.nbi"), *kept.glob(f"{source.stem}.*.nbc")):
            shutil.copy(kernel, installed.parent / "__pycache__" / kernel.name)


def lend_dependencies(env: Path) -> Path:
    """Lend what is not ours, and return the folder that packages are installed in."""
    ask = "import sysconfig; print(sysconfig.get_path('purelib'))"
    site = Path(run(env / "python", "-c", ask, cwd=env).strip())
    (site / "lent.pth").write_text(DEPENDENCIES, encoding="utf-8")
    return site


@pytest.fixture(scope="module")
def wheel(env, tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("dist")
    build(env, "wheel", "-w", place, ROOT, cwd=place)
    (built,) = place.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(env, wheel) -> Path:
    """Return the commands folder with the wheel installed and the dependencies lent."""
    pip(env, "install", "--no-deps", "--no-index", wheel, cwd=wheel.parent)
    lend_kernels(lend_dependencies(env))
    return env


def shipped() -> set[str]:
    """Return every source and data file that the wheel must hold."""
    return {
        path.relative_to(ROOT).as_posix()
        for package in PACKAGES
        for path in (ROOT / package).rglob("*")
        if path.is_file() and path.suffix in {".py", ".toml", ".typ", ".html"}
    }


def test_the_wheel_holds_every_source_and_data_file(wheel):
    held = set(zipfile.ZipFile(wheel).namelist())
    assert {MOVED.get(name, name) for name in shipped()} - held == set()


def test_the_wheel_holds_the_kinds_of_data_it_lives_on(wheel):
    held = zipfile.ZipFile(wheel).namelist()
    for folder in ("catalog/steels/", "catalog/routes/", "catalog/examples/", "selector/"):
        assert any(name.startswith(folder) and name.endswith(".toml") for name in held), folder
    assert "ui/app.py" in held


def test_the_wheel_holds_nothing_else(wheel):
    tops = {name.split("/")[0] for name in zipfile.ZipFile(wheel).namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == {*PACKAGES, MODULE}


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
    asked = ("advise", "part.toml", "--steel", "42CrMo4")
    assert "HRC" in run(installed / "temperwright", *asked, cwd=tmp_path)


def test_it_is_a_module_where_it_is_installed(installed, tmp_path):
    said = run(installed / "python", "-m", MODULE, "--version", cwd=tmp_path)
    assert said == run(installed / "temperwright", "--version", cwd=tmp_path)
    assert said.startswith("temperwright 0.")


def test_it_is_a_module_where_it_is_worked_on(tmp_path):
    env = empty(tmp_path)
    build(env, "install", "-e", ROOT, cwd=tmp_path)
    lend_dependencies(env)
    assert run(env / "python", "-m", MODULE, "--version", cwd=tmp_path).startswith(MODULE)
    ask = "import selector; print(selector.__file__)"
    place = run(env / "python", "-c", ask, cwd=tmp_path).strip()
    assert Path(place) == ROOT / "selector" / "__init__.py"
