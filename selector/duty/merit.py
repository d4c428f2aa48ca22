"""Merits of custom, and the duties of an edge, that the rules of custom share."""

# Merits by kind of steel: usual, also made so, seldom; what is not named is not made so.
USUAL, ALSO, SELDOM, NEVER = 1.0, 0.7, 0.4, 0.0
# Duties of an edge: one that is struck or pressed, and one that cuts.
EDGES = frozenset({"struck edge", "pressed edge"})
CUTS = EDGES | {"cutting edge", "strip blade"}
