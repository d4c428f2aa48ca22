"""Will the torch do: the verdict, what must not go wrong, the one change."""
