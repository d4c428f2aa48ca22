"""The page's own server for browsers to look at, and a part whose advice is quick."""

import copy
import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path
from typing import Any

from tests.dog import varied

ROOT = Path(__file__).parent.parent
# Without a window of its own it takes a seventh less for the same pages.
NAMES = ("chromium-headless-shell", "chromium")
CHROMIUM = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
    "--disable-background-networking", "--disable-component-update", "--disable-dev-shm-usage",
]  # fmt: skip
# With a rack alone there is little to weigh: enough for a first, a second and a third.
RACK: dict[str, Any] = {
    "only_stock": True,
    "stock": [
        {"steel": "4140", "size": "30 mm", "evidence": "certificate"},
        {"steel": "silver steel", "size": "30 mm", "evidence": "marking"},
        {"steel": "C45", "size": "30 mm", "evidence": "receipt"},
    ],
}


def racked(changes: dict[str, Any] | None = None) -> dict[str, Any]:
    """Return the drive dog, to be made of bars in the rack alone; keys as of `varied`."""
    draft = varied(changes)
    draft["workshop"] |= copy.deepcopy(RACK)
    return draft


def started(log: Path, home: Path) -> tuple[subprocess.Popen[bytes], str] | None:
    """Return a page that answers, with its address; None where its port was taken meanwhile."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "ui.serve", "--port", str(port), "--no-browser"]
    with log.open("wb") as out:
        process = subprocess.Popen(  # noqa: S603
            command, stdin=subprocess.DEVNULL, stdout=out, stderr=subprocess.STDOUT, cwd=ROOT,
            env={**os.environ, "XDG_DATA_HOME": str(home)},
        )  # fmt: skip
    url = f"http://127.0.0.1:{port}"
    end = time.monotonic() + 60
    while time.monotonic() < end and process.poll() is None:
        try:
            with urllib.request.urlopen(f"{url}/_stcore/health", timeout=1) as answer:  # noqa: S310
                if answer.read() == b"ok":
                    return process, url
        except OSError:
            time.sleep(0.05)
    process.kill()
    process.wait()
    return None
