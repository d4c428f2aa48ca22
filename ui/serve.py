"""Starts the page's server: `python -m ui.serve`, on this machine alone if not told more."""

import argparse
import socket
import sys
import webbrowser
from pathlib import Path
from threading import Thread
from time import monotonic, sleep

from ui.inward import LOCAL, stay_inside

APP = Path(__file__).with_name("app.py")
# How long the browser is held back until the server answers. [s]
_PATIENCE_S = 60.0


def settings(port: int, host: str) -> list[str]:
    """Return the settings of the server, by which it asks nothing of other machines.

    Parameters
    ----------
    port : int
        Port to listen on.
    host : str
        Address to listen on.

    Returns
    -------
    list of str
        Options of Streamlit's `run`.
    """
    hosts = [*LOCAL] if host in LOCAL else [*LOCAL, host, socket.gethostname()]
    if host in {"0.0.0.0", "::"}:  # noqa: S104 - asked for by name, and warned of
        hosts = ["*"]
    options = {
        "server.port": str(port),
        "server.address": host,
        "server.headless": "true",
        "server.fileWatcherType": "none",
        "browser.gatherUsageStats": "false",
        "browser.serverAddress": host,
    }
    given = [text for key, value in options.items() for text in (f"--{key}", value)]
    return given + [text for name in hosts for text in ("--server.allowedHosts", name)]


def main() -> None:
    """Serve the page until it is stopped."""
    parser = argparse.ArgumentParser(prog="python -m ui.serve")
    parser.add_argument("--port", type=int, default=8501)
    parser.add_argument("--host", default="127.0.0.1")
    parser.add_argument("--part", type=Path)
    parser.add_argument("--no-browser", dest="browser", action="store_false")
    given = parser.parse_args(sys.argv[1:])
    address = f"http://{given.host}:{given.port}"
    if given.part is not None:
        from ui.opening import kept_file  # noqa: PLC0415

        address += f"/part?part={kept_file(given.part)}"
    if given.browser:
        Thread(target=_open, args=(address, given.port), daemon=True).start()
    from streamlit.web.cli import main as run  # noqa: PLC0415

    stay_inside()
    Thread(target=load_ahead, daemon=True).start()
    run(["run", str(APP), *settings(given.port, given.host)])


def load_ahead() -> None:
    """Load what every view needs, while the browser still opens."""
    from catalog.example import FIRST  # noqa: PLC0415
    from ui import answer, cached, meanwhile, opening, part_form  # noqa: F401, PLC0415

    cached.catalog()
    # The first size that is read loads all units.
    meanwhile.so_far(opening.example(FIRST))


def _open(address: str, port: int) -> None:
    """Open the page in the browser as soon as it answers."""
    end = monotonic() + _PATIENCE_S
    while monotonic() < end:
        try:
            socket.create_connection(("127.0.0.1", port), timeout=1).close()
        except OSError:
            sleep(0.1)
        else:
            webbrowser.open(address)
            return


if __name__ == "__main__":
    main()
