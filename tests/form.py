"""Where the page's questions stand, for tests that answer them."""

from streamlit.testing.v1 import AppTest


def field(page: AppTest, path: str) -> str:
    """Return the key of a question's widget on the form as it was last filled."""
    visit, within = page.session_state["visit"], path.split(".")
    fills = sum(visit.fills[".".join(within[:end])] for end in range(1, len(within) + 1))
    return f"{visit.form}/{fills}/{path}"


def unfold(page: AppTest, name: str) -> None:
    """Open a fold of what seldom decides."""
    page.session_state[f"{page.session_state['visit'].id}/more/{name}"] = True
    page.run()


def said(page: AppTest) -> str:
    """Return all that stands on the page as text, a line each."""
    texts = (*page.title, *page.header, *page.markdown, *page.caption, *page.error)
    return "\n".join(str(text.value) for text in texts)
