"""Install the lowest version of everything that pyproject.toml allows, and run it.

Run by hand after a change of a bound, because it downloads: `python
tests/benchmarks/lowest_versions.py` runs the main job, with `--tests` the suite as well.
"""

import re
import subprocess
import sys
import tempfile
import tomllib
import venv
from pathlib import Path

ROOT = Path(__file__).parents[2]
EXAMPLE = ROOT / "catalog/examples/starting-handle-dog.toml"


def lowest(asked: list[str]) -> str:
    """Return the constraints that hold each dependency to its lower bound."""
    return "\n".join(re.sub(r">=([\d.]+),.*", r"==\1", dependency) for dependency in asked)


def run(*command: str | Path, cwd: Path) -> None:
    subprocess.run([str(part) for part in command], cwd=cwd, check=True)  # noqa: S603


def main() -> None:
    tested = "--tests" in sys.argv[1:]
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = [*project["dependencies"]]
    if tested:
        asked += project["optional-dependencies"]["test"]
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        (place / "lowest.txt").write_text(lowest(asked), encoding="utf-8")
        venv.create(place / "env", with_pip=True)
        python = place / "env" / ("Scripts" if sys.platform == "win32" else "bin") / "python"
        wanted = f"{ROOT}[test]" if tested else ROOT
        run(python, "-m", "pip", "install", "-q", "-c", "lowest.txt", wanted, cwd=place)
        run(python, "-m", "temperwright", "--version", cwd=place)
        run(python, "-m", "temperwright", "advise", EXAMPLE, "--top", "1", cwd=place)
        if tested:
            skip = ("--ignore", "tests/test_wheel.py", "--ignore", "tests/browser")
            run(python, "-m", "pytest", "-q", "-n", "2", "--dist", "loadfile", *skip, cwd=ROOT)


if __name__ == "__main__":
    main()
