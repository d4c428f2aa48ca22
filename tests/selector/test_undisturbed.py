import gc

import pytest
from threadpoolctl import threadpool_info, threadpool_limits

from selector.undisturbed import undisturbed


def threads():
    return {pool["num_threads"] for pool in threadpool_info() if pool["user_api"] == "blas"}


def test_nothing_is_collected_within_and_all_is_as_before_after():
    with undisturbed():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_one_thread_multiplies_within_and_as_many_as_before_after():
    with threadpool_limits(limits=2, user_api="blas"):
        with undisturbed():
            assert threads() == {1}
        assert threads() == {2}


def test_an_error_lets_go():
    with pytest.raises(ValueError, match="no"), undisturbed():
        raise ValueError("no")
    assert gc.isenabled()


def test_who_had_it_off_keeps_it_off():
    gc.disable()
    try:
        with undisturbed():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()
