"""Whether steel turns brittle as it cools slowly from a high temper."""

from collections.abc import Mapping

# Lean alloy steel is meant; more chromium makes a hot-work or stainless steel. Of manganese,
# chromium and nickel together it takes so much, and up to the last either is residue. [wt %]
MOST_CR, LEAST_ALLOY, RESIDUE = 4.0, 1.2, 0.4
# So much molybdenum holds it off, tungsten half as well. [wt %]
CURES_MO = 0.2


def slow_cooling_embrittles(composition_wt_pct: Mapping[str, float]) -> bool:
    """Return whether a steel turns brittle on slow cooling through 575 to 375 °C.

    Parameters
    ----------
    composition_wt_pct : mapping of str to float
        Contents by symbol. [wt %]

    Returns
    -------
    bool
        For lean alloy steel without molybdenum. [-]

    Notes
    -----
    Reversible temper embrittlement: phosphorus and its like gather at the grain boundaries in
    steels alloyed with manganese, chromium and nickel; plain carbon steel is all but free of
    it, molybdenum of 0.2 to 0.5 % holds it off [1]_ (from memory). The least alloy, 1.2 %, is
    set between plain steel with its residues and 5140; tungsten counts half. Hot-work steel of
    5 % chromium and rust-free steel cool in air from any temper: their dip in toughness about
    500 °C goes with the temper itself, not with how they cool.

    References
    ----------
    .. [1] ASM Handbook vol. 4, Heat Treating: temper embrittlement.

    Examples
    --------
    >>> slow_cooling_embrittles({"Cr": 1.05, "Mn": 0.75})
    True
    >>> slow_cooling_embrittles({"Cr": 1.05, "Mn": 0.75, "Mo": 0.22})
    False
    """
    held = composition_wt_pct
    if held.get("Cr", 0.0) > MOST_CR:
        return False
    if held.get("Mo", 0.0) + 0.5 * held.get("W", 0.0) >= CURES_MO:
        return False
    added = [held.get(name, 0.0) for name in ("Cr", "Ni")]
    alloy = held.get("Mn", 0.0) + sum(part for part in added if part > RESIDUE)
    return alloy >= LEAST_ALLOY
