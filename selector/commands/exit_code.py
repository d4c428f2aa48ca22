"""The exit codes of all commands, as the README lists them."""

# No option is left, no steel has the name, no quench hardens it, no temper gives the hardness.
NO_ANSWER = 1
BAD_INPUT = 2
# As in sysexits.h (EX_SOFTWARE, EX_IOERR): an error of ours, an output that takes no more.
UNFORESEEN, UNWRITTEN = 70, 74
# As a shell says of what Ctrl-C stopped, and of a program whose reader has gone.
STOPPED, CLOSED = 130, 141
