from importlib.metadata import version

from selector.handover.version import version_of


def test_the_version_is_that_of_what_is_installed():
    assert version_of("numpy") == version("numpy")


def test_what_is_not_installed_is_in_work():
    assert version_of("no-such-package") == "in work"
