import gc

import pytest

from selector.collecting import held_back


def test_nothing_is_collected_within_and_all_is_as_before_after():
    with held_back():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_an_error_lets_go():
    with pytest.raises(ValueError, match="no"), held_back():
        raise ValueError("no")
    assert gc.isenabled()


def test_who_had_it_off_keeps_it_off():
    gc.disable()
    try:
        with held_back():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()
