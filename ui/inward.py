"""Nothing is asked of any other machine, whatever header a request carries.

For a foreign origin the server would ask an outside address for its own, to compare.
"""

from streamlit import net_util

# Names by which the page is reached on this machine.
LOCAL = ("localhost", "127.0.0.1", "[::1]")


def stay_inside() -> None:
    """Let the server know no address of its own but those it was given."""
    net_util.get_external_ip = _unknown
    net_util.get_internal_ip = _unknown


def _unknown() -> str | None:
    """Return that there is none."""
    return None
