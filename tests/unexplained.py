"""Published cases of which some are mismatches that nobody can explain yet."""

import pytest


def marked(cases, unexplained):
    """Return cases for pytest to try, a strict xfail with its sentence on the unexplained."""
    return [
        pytest.param(case, marks=pytest.mark.xfail(strict=True, reason=unexplained[case]))
        if case in unexplained
        else case
        for case in cases
    ]
