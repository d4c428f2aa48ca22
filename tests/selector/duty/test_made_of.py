from typing import get_args

from catalog.steel import SteelClass
from selector.duty.made_of import CERTIFIED, KINDS, LINED, MADE, SKIN, THROUGH, Make
from selector.duty.merit import NEVER, USUAL
from selector.duty.named_duty import Duty


def test_every_duty_says_what_is_hardened_for_it():
    assert set(THROUGH) == set(get_args(Duty))
    assert set(SKIN) | set(LINED) <= set(get_args(Duty))


def test_what_is_not_hardened_goes_by_duty_and_by_kind():
    assert set(MADE) == set(KINDS) == set(get_args(Make)) - {"hardened", "skin"}
    assert set(CERTIFIED) <= set(MADE)


def test_merits_lie_between_never_and_usual_and_name_kinds_that_are():
    by_kind = [*THROUGH.values(), *SKIN.values(), *KINDS.values(), *CERTIFIED.values()]
    merits = [merit for row in [*by_kind, *MADE.values(), LINED] for merit in row.values()]
    assert all(NEVER <= merit <= USUAL for merit in merits)
    assert {kind for row in by_kind for kind in row} <= {*get_args(SteelClass), "other"}
