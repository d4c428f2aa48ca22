"""Where the page's questions stand, for tests that answer them."""

from streamlit.testing.v1 import AppTest


def field(page: AppTest, path: str) -> str:
    """Return the key of a question's widget on the form as it was last filled."""
    return f"part/{page.session_state['filled']}/{path}"
