"""One option by its id is the same that `advise` lists."""

from selector.decision.output import option_out
from selector.versus.option_id import BREAK
from selector.versus.side import judged_option
from tests.once import advised


def test_an_option_by_its_id_has_the_record_of_the_advice():
    advice = advised(None, "42crmo4", "c45", "115crv3")
    for place, option in enumerate(advice.options, start=1):
        alone = judged_option(option.id, advice.job)
        assert option_out(advice.job, alone, place, advice.ranges) == option_out(
            advice.job, option, place, advice.ranges
        )


def test_an_id_copied_from_a_sheet_may_hold_places_to_break_at():
    advice = advised(None, "42crmo4", "c45", "115crv3")
    name = advice.options[0].id
    assert judged_option(BREAK.join(name), advice.job).id == name
