"""The programs of Dask on this machine's loopback, each ended with whoever started it."""

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]
PATIENCE_S = 180.0


@contextmanager
def _started(program: str, *arguments: str) -> Iterator[subprocess.Popen[bytes]]:
    """Run one of the programs of Dask, killed at the end."""
    run = [sys.executable, "-m", f"distributed.cli.{program}", *arguments]
    with subprocess.Popen(  # noqa: S603
        [*run, "--host", "127.0.0.1", "--no-dashboard"],
        cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    ) as process:  # fmt: skip
        try:
            yield process
        finally:
            process.kill()


@contextmanager
def scheduler(file: Path) -> Iterator[str]:
    """Run a scheduler that writes its address to a file, and give the address."""
    with _started("dask_scheduler", "--port", "0", "--scheduler-file", str(file)):
        yield _address_in(file)


def _address_in(file: Path) -> str:
    """Return the address of a scheduler once it has written it."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        try:
            address: str = json.loads(file.read_text(encoding="utf-8"))["address"]
        except (OSError, ValueError):
            time.sleep(0.05)
        else:
            return address
    raise TimeoutError(file)


@contextmanager
def worker(address: str, name: str) -> Iterator[subprocess.Popen[bytes]]:
    """Run a worker of one thread that nobody starts again, and give its process."""
    arguments = (address, "--name", name, "--nthreads", "1", "--no-nanny")
    with _started("dask_worker", *arguments) as process:
        yield process
