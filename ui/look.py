"""Looks at what a session holds that no newer answer of the browser can cut short.

Streamlit ends a run at any look at its state once a newer answer waits. A callback that is
ended so is not called again: what was typed would stand on the screen and nowhere else.
"""

from collections.abc import Callable
from typing import TypeVar

from streamlit.runtime.scriptrunner import RerunException, get_script_run_ctx

T = TypeVar("T")


def looked_up(look: Callable[[], T]) -> T:
    """Return what a look finds; newer answers that it meets wait on, in their order.

    Parameters
    ----------
    look : callable
        Reads the session and changes nothing.

    Returns
    -------
    object
        What it returns.
    """
    waiting = []
    try:
        while True:
            try:
                return look()
            except RerunException as newer:
                waiting.append(newer.rerun_data)
    finally:
        context = get_script_run_ctx() if waiting else None
        if context is not None and context.script_requests is not None:
            for answer in waiting:
                context.script_requests.request_rerun(answer)
