from ui import option_name


def test_an_option_in_one_line_has_its_place_or_none(advice):
    first = advice.options[0]
    assert f"1 · {option_name.unplaced(first)}".startswith(
        f"{option_name.in_short(first)}; right"
    )


def test_an_option_of_the_steel_of_the_first_is_called_by_all_that_is_done(advice):
    first, other = advice.options[0], advice.options[-1]
    assert option_name.beside(other, first) == other.spoken != first.spoken
    twin = first.model_copy(update={"condition": "annealed", "route_name": "Harden"})
    assert option_name.beside(twin, first).startswith(f"{first.spoken}, annealed: harden")
