"""The help of every command is for people who use it."""

import pytest

from selector.commands import COMMANDS
from selector.commands.help import help_of
from selector.commands.trial import plan


@pytest.mark.parametrize("command", [*COMMANDS.values(), plan], ids=lambda c: c.__name__)
def test_help_says_what_a_command_does_and_no_section_of_a_reference(command):
    text = help_of(command)
    assert text
    for word in ("Raises", "Parameters", "---", "\n "):
        assert word not in text


def test_the_codes_are_said_once():
    def silent():
        """Do it.

        Raises
        ------
        Exit
            1 where nothing is left;
            2 at wrong input.
        """

    def said():
        """Do it.

        Exit 1 where nothing is left.

        Raises
        ------
        Exit
            With the code above.
        """

    assert help_of(silent) == "Do it.\n\nExit 1 where nothing is left; 2 at wrong input."
    assert help_of(said) == "Do it.\n\nExit 1 where nothing is left."
