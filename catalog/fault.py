"""How a fault of the user's own files is said, the same wherever it is seen."""


def fault_line(file: str, key: str, rule: str, got: str) -> str:
    """Return a fault in one line.

    Parameters
    ----------
    file : str
        Name of the file.
    key : str
        Dotted path of the value in it.
    rule : str
        What it must be.
    got : str
        What stands there.

    Returns
    -------
    str
        As `temperwright check` prints it.

    Examples
    --------
    >>> fault_line("oil.toml", "temperature_c.min", "must be a number", "'warm'")
    "oil.toml: temperature_c.min: must be a number (got 'warm')"
    """
    return f"{file}: {key}: {rule} (got {got})"
