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
    drawn = AppTest.from_string(SCRIPT).run()
    assert not drawn.exception
    assert drawn.markdown[0].value == "- 50 \\*HRC\\*\n- two"
    assert drawn.markdown[1].value == ":small[fine\\: print]"
    assert list(drawn.table[0].value["a"]) == ["x"]
