import pytest

from selector.procedure.heating import (
    heat_times_s,
    heated,
    heating_steps,
    held,
    held_parts_s,
    stronger,
    time_words,
)
from selector.procedure.laid import set_up, within_s
from tests.procedure import KILN, at, doing, steps_of

O1 = ("100mncrw4", "through-furnace", "oil")


def test_gauge_plate_is_soaked_coated_and_tempered_twice():
    steps = steps_of(*O1, KILN)
    assert "anti-scale compound" in at(steps, "set-up")[0].action
    preheat, heat, soak = at(steps, "heat")
    assert (preheat.temperature_c, heat.temperature_c, soak.minutes) == (650, 800, 25)
    assert heat.read_by == "furnace"
    (temper,) = at(steps, "temper")
    assert temper.times == 2


def test_air_hardening_steel_is_wrapped_preheated_and_hung():
    steps = steps_of("x153crmov12", "through-furnace", "air", KILN)
    assert "stainless tool foil" in at(steps, "set-up")[0].action
    assert at(steps, "heat")[0].temperature_c == 650
    assert "still air" in at(steps, "quench")[0].action


def test_high_speed_steel_is_preheated_twice_and_tempered_thrice():
    hot = {"workshop.heat": [{"source": "kiln", "ceiling": "1280 degC"}]}
    steps = steps_of("hs6-5-2", "through-furnace", "air", hot)
    assert [s.temperature_c for s in at(steps, "heat")] == [550, 850, 1210, 1210]
    assert at(steps, "temper")[0].times == 3
    assert at(steps, "temper")[0].colour is None


def test_the_flame_is_laid_and_the_move_rehearsed():
    do = doing("42crmo4", "local-torch", "oil")
    laid = set_up(do)
    assert "heating nozzle" in laid.action
    assert f"{within_s(do.set_up):.0f} s" in laid.check
    assert laid.length_mm > 18


def test_the_hold_counts_from_when_the_zone_is_of_one_colour():
    do = doing("115crv3", "local-torch", "water")
    slow = do.set_up.model_copy(update={"even_s": 48.0, "hold_s": 80.0})
    assert held_parts_s(slow) == (50.0, 30.0)
    step = held(do, slow)
    assert step.action.startswith("Play the flame over the dull ends")
    assert step.short == "hold 30 s once it is of one colour"
    assert step.minutes == round(80.0 / 60.0, 2)
    quick = do.set_up.model_copy(update={"even_s": 2.5, "hold_s": 40.0})
    assert held_parts_s(quick) == (0.0, 40.0)
    assert held(do, quick).action.startswith("Hold 40 s")


def test_many_go_into_a_furnace_by_loads_and_through_a_flame_one_by_one():
    many = {"part.quantity": 40}
    load = at(steps_of(*O1, {**KILN, **many}), "set-up")[0].action
    assert "40 in " in load or "all 40 in one load" in load
    flame = set_up(doing("42crmo4", "local-torch", "oil", many)).action
    assert "one after the other" in flame
    assert flame.endswith("for 40")
    assert "one after" not in set_up(doing("42crmo4", "local-torch", "oil")).action


def test_small_parts_lie_in_a_tray_and_ends_side_by_side_in_the_fire():
    small = {f"part.section.{k}.{name}": mm for k in (0, 1)
             for name, mm in (("size", 5.0), ("length", 15.0))}  # fmt: skip
    lot = {**small, "part.feature": [], "part.quantity": 12}
    whole = steps_of("c45", "through-torch", "oil", lot)
    assert "in a small tray" in at(whole, "set-up")[0].action
    assert "into a wire basket" in at(whole, "quench")[0].action
    forge = doing("c45", "local-torch", "oil", lot, source="forge")
    assert "side by side in the fire" in set_up(forge).action
    assert "tray" not in set_up(forge).action
    assert "the end alone in the chamber" in set_up(forge).action


@pytest.mark.parametrize("light", ["dim", "sun"])
def test_the_colour_is_that_of_the_light(light):
    do = doing("42crmo4", "local-torch", "oil", {"workshop.light": light})
    step = heated(do, do.set_up)
    words = {"dim": "in dim light", "sun": "in the sun"}[light]
    assert f"{step.colour} {words}" in step.action
    assert held(do, do.set_up).minutes < 3


def test_the_magnet_of_a_cool_hardening_steel_is_where_it_just_lets_go():
    changes = {"workshop.measure": ["magnet"]}
    do = doing("115crv3", "through-torch", "water", changes)
    cool = do.set_up.model_copy(update={"heat_c": 770.0})
    assert "just lets go" in heated(do, cool).action


def test_thick_tool_steel_is_brought_up_slowly_at_a_fire():
    thick, thin = (
        doing(
            "100mncrw4",
            "through-torch",
            "oil",
            {"part.section.0.size": size} | {"part.section.1.size": size},
        )
        for size in (25.0, 8.0)
    )
    assert "dull red (650 °C)" in heating_steps(thick)[1].action
    assert "dull red" not in heating_steps(thin)[1].action


def test_nobody_is_told_to_be_slow():
    do = doing("c45", "through-torch", "oil", {"workshop.skill": {"delay": 5.0}})
    assert do.set_up.delay_s > 7
    assert within_s(do.set_up) == 4


def test_a_torch_far_from_its_time_is_another_than_was_forecast():
    assert heat_times_s(53.0) == (25.0, 55.0, 105.0)
    assert time_words(53.0) == "about 55 s, 25 s to 1.8 min will do"
    do = doing("c45", "through-torch", "oil")
    step = heated(do, do.set_up)
    assert time_words(do.set_up.to_heat_s) in step.action
    assert step.otherwise.endswith(f"far off the time: {stronger(do)}")
