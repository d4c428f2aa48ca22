import numpy as np

from selector.metallurgy.fitting.left_out import leave_one_out

GROUP = np.array(["b", "a", "b", "c"])
VALUE = np.array([1.0, 2.0, 3.0, 7.0])


def test_each_group_is_missed_by_a_fit_of_the_others():
    miss = leave_one_out(GROUP, lambda out: VALUE[out] - VALUE[~out].mean())
    np.testing.assert_allclose(miss, [1 - 4.5, 2 - 11 / 3, 3 - 4.5, 7 - 2])


def test_progress_names_each_group_once_and_rises():
    message = []
    leave_one_out(GROUP, lambda out: VALUE[out], lambda *said: message.append(said))
    assert [text for text, _ in message] == [f"Leaving out {name}" for name in "abc"]
    assert [share for _, share in message] == [0.0, 1 / 3, 2 / 3]
