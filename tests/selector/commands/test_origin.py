import io

from rich.console import Console

from selector.commands.origin import print_origins
from selector.need.need import need
from tests.dog import asked


def test_origins_stand_under_their_title_and_brackets_stay_text():
    out = io.StringIO()
    print_origins(need(asked()), Console(file=out, width=200))
    title, first, *_ = out.getvalue().splitlines()
    assert title == "Where the numbers come from"
    assert first.startswith("   sections 1.least: ")
