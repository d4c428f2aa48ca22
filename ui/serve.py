"""Starts the page's server: `python -m ui.serve` with the options of Streamlit's `run`."""

import sys
from pathlib import Path

from ui.inward import stay_inside

APP = Path(__file__).with_name("app.py")


def main() -> None:
    """Serve the page until it is stopped."""
    from streamlit.web.cli import main as run  # noqa: PLC0415

    stay_inside()
    run(["run", str(APP), *sys.argv[1:]])


if __name__ == "__main__":
    main()
