from streamlit.testing.v1 import AppTest

SCRIPT = """
import pandas as pd
from ui import piece

piece.table(pd.DataFrame({"a": ["x"]}))
piece.bullets(["50 *HRC*", "two"])
piece.small("fine: print")
piece.download("Take it", "text", "it.txt")
"""


def test_texts_are_taken_literally():
    page = AppTest.from_string(SCRIPT).run()
    assert not page.exception
    assert page.markdown[0].value == "- 50 \\*HRC\\*\n- two"
    assert page.markdown[1].value == ":small[fine\\: print]"
    assert list(page.table[0].value["a"]) == ["x"]
