from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.decision.preference import NAMED, work_of
from selector.duty.custom import custom, custom_words, duty_of, make_of
from selector.duty.damp import rusts
from selector.duty.merit import ALSO, NEVER, SELDOM, USUAL
from selector.duty.way import MANY_HEATS
from selector.job.bench import bench
from selector.job.candidates import screened
from selector.job.job import resolved
from tests.dog import GONE, asked, only, work

CATALOG = load_catalog()

EDGE = {"part.feature": [{"kind": "edge", "at": "0 mm"}]}
CASES = {
    "struck edge": {**EDGE, "zone.0.wear": "edge-impact", "load.impact": "hammered"},
    "pressed edge": {
        **EDGE, "part.name": "Shear blade", "zone.0.wear": "edge-impact", "load.impact": "none",
    },
    "cutting edge": {**EDGE, "zone.0.wear": "abrasive"},
    "grit": {"part.feature": [], "zone.0.wear": "abrasive"},
    "gear": {
        "part.feature": [{"kind": "teeth", "at": "5 mm"}],
        "zone.0.wear": "rolling-contact",
    },
    "rolling": {"part.feature": [], "zone.0.wear": "rolling-contact"},
    "sliding": {"part.feature": [], "zone.0.wear": "sliding", "zone.0.severity": "medium"},
    "spring": {"part.feature": [], "part.name": "Latch spring", "zone.0.wear": "none"},
    "gauge": {
        "part.feature": [], "part.name": "Ring gauge", "zone.0.wear": "sliding",
        "zone.0.severity": "light",
    },
    "pressed face": {"part.feature": [], "part.name": "Coining die", "zone.0.wear": "sliding"},
    # A window of its own, and a name that says tool, leave a driving square one.
    "drive": {
        "part.feature": [], "part.name": "Drive tool", "zone.0.wear": "sliding",
        "zone.0.severity": "light", "part.section.0.shape": "square",
        "zone.0.hardness": {"min": "39 HRC", "max": "50 HRC"},
    },
}  # fmt: skip


def lead(changes):
    return resolved(asked(changes), CATALOG).leading


@pytest.mark.parametrize("duty", CASES)
def test_a_zone_is_named_by_its_duty(duty):
    wanted = asked(CASES[duty])
    assert duty_of(resolved(wanted, CATALOG).leading, wanted) == duty


@pytest.mark.parametrize(
    ("duty", "made", "merit"),
    [
        ("struck edge", ("60wcrv8", "local-torch"), USUAL),
        ("struck edge", ("100mncrw4", "local-torch"), SELDOM),
        ("struck edge", ("60wcrv8", "through-torch"), 0.7 * USUAL),
        ("struck edge", ("16mncr5", "pack-carburise"), NEVER),
        ("cutting edge", ("115crv3", "through-torch", "water"), USUAL),
        ("cutting edge", ("c55", "through-torch"), NEVER),
        ("gear", ("16mncr5", "pack-carburise"), USUAL),
        ("gear", ("55cr3", "through-furnace"), NEVER),
        ("rolling", ("100cr6", "through-furnace"), USUAL),
        ("rolling", ("42crmo4", "subcontract-nitride"), NEVER),
        ("spring", ("c75s", "through-furnace"), USUAL),
        ("spring", ("42crmo4", "through-furnace"), NEVER),
        ("sliding", ("16mncr5", "subcontract-carburise"), USUAL),
        ("sliding", ("115crv3", "residual-heat", "water"), SELDOM),
        ("gauge", ("100mncrw4", "through-furnace"), USUAL),
        ("gauge", ("s235", "as-bought"), NEVER),
        ("pressed face", ("100mncrw4", "through-furnace"), USUAL),
        ("pressed face", ("16mncr5", "pack-carburise"), 0.2),
    ],
)  # fmt: skip
def test_custom_says_what_such_a_part_is_made_of(duty, made, merit):
    wanted = asked(CASES[duty])
    zone = resolved(wanted, CATALOG).leading
    assert custom(work(*made), zone, wanted) == merit


def test_a_small_tool_is_made_of_ground_rod_and_a_large_one_of_black_bar_too():
    tool = {"part.feature": [], "zone.0.wear": "none", "load.torque": "2 N m"}
    slim = {**tool, "part.section.0.size": "8 mm", "part.section.1.size": "8 mm"}

    def merit(made, changes):
        return custom(work(*made), lead(changes), asked(changes))

    assert duty_of(lead(slim), asked(slim)) == "tool"
    assert merit(("817m40", "local-torch"), slim) == SELDOM
    assert merit(("817m40", "local-torch"), tool) == ALSO
    assert merit(("115crv3", "local-torch"), slim) == USUAL


def test_what_works_the_ground_is_of_boron_steel_before_dearer_alloy():
    share = {"part.feature": [], "part.name": "Plough share", "zone.0.wear": "abrasive"}
    wanted = asked(share)
    assert duty_of(lead(share), wanted) == "soil"
    boron, chromium = (
        custom(work(steel, "local-torch"), lead(share), wanted)
        for steel in ("38mnb5", "42crmo4")
    )
    assert (boron, chromium) == (USUAL, SELDOM)


def test_a_small_pinion_is_cut_of_silver_steel_and_a_large_gear_is_not():
    slim = {**CASES["gear"], "part.section.0.size": "5 mm", "part.section.1.size": "3 mm"}

    def merit(made, changes):
        return custom(work(*made), lead(changes), asked(changes))

    assert merit(("115crv3", "through-torch"), slim) == ALSO
    assert merit(("115crv3", "residual-heat"), slim) == SELDOM
    assert merit(("115crv3", "through-torch"), CASES["gear"]) == NEVER
    # Nor is a ring with a thin wall.
    ring = {**CASES["gear"], "part.section.0.bore": "20 mm", "part.section.1.bore": "20 mm"}
    assert merit(("115crv3", "through-torch"), ring) == NEVER


@pytest.mark.parametrize(
    ("made", "make"),
    [
        (("s235", "as-bought"), "as bought"),
        (("42crmo4", "subcontract-induction"), "skin"),
        (("42crmo4", "subcontract-laser"), "skin"),
        (("16mncr5", "pack-carburise"), "case"),
        (("31crmo12", "subcontract-nitride"), "nitrided"),
        (("c45", "local-torch"), "hardened"),
    ],
)
def test_what_is_made_of_a_bar_has_its_rough_name(made, make):
    assert make_of(work(*made)) == make


def test_what_bears_a_load_again_and_again_is_of_tough_steel():
    """Spindles and axles: cased or tough steel; neither tool steel nor free-cutting bar."""
    tired = {"load.cycles": "fatigue", "load.bending": "30 N m"}
    track = {**CASES["rolling"], **tired}
    plain = {"part.feature": [], "zone.0.wear": "none", "zone.0.hardness": GONE}

    def merit(made, changes):
        return custom(work(*made), lead(changes), asked(changes))

    o1 = ("100mncrw4", "through-furnace")
    assert merit(o1, track) < merit(o1, CASES["rolling"])
    assert merit(("16mncr5", "subcontract-carburise"), track) == USUAL
    en1a = ("11smn30", "as-bought")
    assert merit(en1a, {**plain, **tired}) < merit(en1a, plain) == USUAL


@pytest.mark.parametrize("steel", ["60wcrv8", "100mncrw4", "x40crmov5-1", "c105u", "42crmo4"])
def test_tool_steel_made_for_a_milder_bath_is_not_put_into_water(steel):
    """Common practice: it cracks, however thin."""
    wanted = asked(CASES["struck edge"])
    zone = lead(CASES["struck edge"])
    in_water = custom(work(steel, "residual-heat", "warm-water"), zone, wanted)
    made_for_it = CATALOG.steels[steel].hardened.quench == "water" or steel == "42crmo4"
    assert (in_water > NEVER) is made_for_it


def test_a_smithy_chisel_wants_half_a_percent_of_carbon():
    wanted = asked(CASES["struck edge"])
    zone = lead(CASES["struck edge"])
    assert custom(work("c60", "local-torch"), zone, wanted) == ALSO
    assert custom(work("c45", "local-torch"), zone, wanted) < ALSO


def test_a_small_part_in_the_damp_stands_back_where_it_rusts():
    damp = asked({**CASES["sliding"], "limit.corrosion": "mild",
                  **{f"part.section.{n}.size": "8 mm" for n in range(2)}})  # fmt: skip
    assert rusts(work("115crv3", "through-torch"), damp)
    assert not rusts(work("x105crmo17", "through-furnace"), damp)
    assert not rusts(work("115crv3", "through-torch"), asked(CASES["sliding"]))
    spring = asked({**CASES["spring"], "limit.corrosion": "mild"})
    assert not rusts(work("250a53", "through-torch"), spring)


def test_custom_in_words():
    said = [custom_words(merit) for merit in (USUAL, ALSO, SELDOM, NEVER)]
    assert len(set(said)) == 4
    assert said[-1].startswith("nobody")


def test_bar_as_bought_is_least_work_and_a_case_sent_out_most():
    works = [work_of(work("s235", "as-bought")), work_of(work("c45", "through-torch")),
             work_of(work("16mncr5", "pack-carburise"))]  # fmt: skip
    assert works == sorted(works)
    assert works[0] == 0


def test_an_end_is_less_work_for_a_flame_than_the_whole_part():
    assert work_of(work("c45", "local-torch")) < work_of(work("c45", "through-torch"))


def test_what_few_shops_can_do_is_seldom_done():
    wanted = asked(CASES["sliding"])
    lead = resolved(wanted, CATALOG).leading
    kiln = "muffle-furnace"
    plain, cold = (
        custom(work("100mncrw4", route, "oil", kiln), lead, wanted)
        for route in ("through-furnace", "through-furnace-cold")
    )
    assert cold <= SELDOM < plain
    chromed = custom(work("c45", "subcontract-chrome", None, None), lead, wanted)
    assert NEVER < chromed < custom(work("c45", "subcontract-induction", "water", None), lead,
                                    wanted)  # fmt: skip


def test_a_large_lot_is_seldom_heated_piece_by_piece_by_eye():
    few, many = (asked({**CASES["sliding"], "part.quantity": n}) for n in (MANY_HEATS, 70))
    lead = resolved(few, CATALOG).leading
    torch, sent = (
        work("c45", "through-torch"),
        work("c45", "subcontract-induction", "water", None),
    )
    assert custom(torch, lead, few) > custom(torch, lead, many) == SELDOM
    assert custom(sent, lead, few) == custom(sent, lead, many)


def test_oil_is_for_little_more_than_the_section_it_hardens():
    worn = {**CASES["cutting edge"], "part.feature": []}
    sizes = (7.0, 9.0, 11.0, 16.0)
    merits = []
    for size in sizes:
        thick = {f"part.section.{n}.size": size for n in (0, 1)}
        wanted = asked({**worn, **thick})
        lead = resolved(wanted, CATALOG).leading
        merits.append(custom(work("115crv3", "through-torch", "oil"), lead, wanted))
    assert merits == sorted(merits, reverse=True)
    assert merits[0] > merits[1] > merits[2] > merits[3] > NEVER


def test_only_bar_is_left_where_lives_depend_on_it():
    wanted = asked({"safety_use": "lifting", "zone.0.hardness": None})
    going = [i.treatment for i in screened(wanted, CATALOG, bench(wanted, CATALOG))
             if i.gate is None]  # fmt: skip
    assert going
    assert all(item.route.place != "workshop" for item in going)
    named = advise(wanted, only("42crmo4", "c45", "16mncr5")).options
    assert {option.treatment.route.process for option in named} == {"none"}
    assert len(named) <= NAMED


def test_what_a_firm_hardens_for_lives_is_what_such_parts_are_made_of():
    struck = asked({
        "part.feature": [], "zone.0.wear": "edge-impact", "load.impact": "hammered",
        "safety_use": "lifting",
    })  # fmt: skip
    demand = resolved(struck, CATALOG).leading
    shock, stainless = (
        custom(work(steel, "subcontract-vacuum", "oil", None), demand, struck)
        for steel in ("50crmov13-15", "x30cr13")
    )
    assert shock == SELDOM > stainless == NEVER
    own = custom(work("50crmov13-15", "through-furnace", "oil", None), demand, struck)
    assert own == NEVER


@pytest.mark.parametrize(
    ("source", "merit"), [("hand-torch", SELDOM), ("muffle-furnace", USUAL)]
)
def test_steel_that_hardens_in_air_is_seldom_hardened_by_eye(source, merit):
    route = "through-torch" if source == "hand-torch" else "through-furnace"
    wanted = asked(CASES["pressed edge"])
    made = work("a6", route, "air", source, condition="annealed")
    demand = resolved(wanted, CATALOG).leading
    assert custom(made, demand, wanted) == pytest.approx(merit)


def test_hot_tools_are_not_made_of_steel_for_cold_work():
    hot = asked({**CASES["struck edge"], "limit.service_temperature": "450 degC"})
    demand = resolved(hot, CATALOG).leading
    assert custom(work("x40crmov5-1", "through-furnace"), demand, hot) >= ALSO
    assert custom(work("100mncrw4", "through-furnace"), demand, hot) == NEVER
    assert custom(work("115crv3", "through-torch"), demand, hot) == NEVER
    assert custom(work("51crv4", "through-torch"), demand, hot) > NEVER


def test_what_works_the_ground_is_cut_of_hard_strip_and_may_rust():
    edger = asked(
        {"part.name": "Turf edger", "part.feature": [], "zone.0.wear": "abrasive",
         "zone.0.hardness": GONE, "load.impact": "light", "limit.corrosion": "mild"}
    )  # fmt: skip
    strip = work("c75s", "prehard-bar", condition="prehard")
    assert custom(strip, resolved(edger, CATALOG).leading, edger) == ALSO
    assert not rusts(strip, edger)


def test_thick_silver_steel_is_seldom_put_into_oil():
    wanted = asked(CASES["sliding"])
    found = resolved(wanted, CATALOG).leading
    oil, water = (custom(work("115crv3", medium=m), found, wanted) for m in ("oil", "water"))
    assert oil == pytest.approx(SELDOM * water)


def test_mould_steel_is_for_moulds():
    merits = []
    for duty in ("gear", "pressed face"):
        wanted = asked(CASES[duty])
        zone = resolved(wanted, CATALOG).leading
        mould = work("40crmnnimo8-6-4", "subcontract-nitride", None, None, "prehard")
        merits.append(custom(mould, zone, wanted))
    assert merits[0] == NEVER
    assert merits[1] > SELDOM


@pytest.mark.parametrize(
    ("steel", "merit"), [("c75s", USUAL), ("1084", USUAL), ("c100s", NEVER)]
)
def test_a_spring_is_hardened_by_eye_of_steel_that_is_not_soon_overheated(steel, merit):
    wanted = asked(CASES["spring"])
    assert custom(work(steel, "through-torch"), lead(CASES["spring"]), wanted) == merit


@pytest.mark.parametrize(
    ("size", "shape", "merit"), [(16, "round", ALSO), (8, "square", SELDOM), (30, "round", 0.1)]
)
def test_rod_of_tool_steel_that_lies_there_is_used_soft_where_it_is_thin(size, shape, merit):
    wanted = asked(
        {
            "part.section.0.size": f"{size} mm", "part.section.1.size": f"{size} mm",
            "part.section.0.shape": shape, "load": {"impact": "none", "cycles": "static"},
            "part.feature": [], "zone.0.wear": "none", "zone.0.hardness": GONE,
            "workshop.stock": [{"steel": "silver steel", "size": "30 mm"}],
        }
    )  # fmt: skip
    bar = work("115crv3", "as-bought", None, None)
    lying = replace(bar, stock=wanted.workshop.stock[0])
    found = custom(lying, resolved(wanted, CATALOG).leading, wanted)
    assert found == pytest.approx(merit)


@pytest.mark.parametrize(("steel", "less"), [("100mncrw4", True), ("x100crmov5", False)])
def test_steel_for_oil_is_less_usual_between_plates(steel, less):
    job = resolved(asked(EDGE), CATALOG)
    oiled, pressed = (
        custom(work(steel, "through-furnace", bath, "kiln"), job.leading, job.asked)
        for bath in ("oil", "plates")
    )
    assert (pressed < oiled) is less


def test_teeth_left_soft_are_of_harder_bar_than_mild_steel():
    gear = {**CASES["gear"], "load.impact": "none"}
    mild, carbon, prehard = (
        custom(work(steel, route, None, None, condition), lead(gear), asked(gear))
        for steel, route, condition in (
            ("070m20", "as-bought", "cold-drawn"),
            ("080m40", "as-bought", "cold-drawn"),
            ("817m40", "prehard-bar", "prehard"),
        )
    )
    assert mild < carbon == prehard == ALSO


@pytest.mark.parametrize(
    ("more", "merit"),
    [
        ({"load": {"impact": "light", "cycles": "occasional"}}, ALSO),
        ({"load": {"impact": "light", "cycles": "occasional", "torque": "20 N m"}}, SELDOM),
        ({"load": {"impact": "hammered", "cycles": "occasional"}}, SELDOM),
    ],
    ids=["knocked", "loaded", "hammered"],
)
def test_what_holds_and_is_knocked_may_be_of_gauge_plate(more, merit):
    stop = {"part.name": "Stop", "part.feature": [], "zone.0.wear": "edge-impact", **more}
    assert duty_of(lead(stop), asked(stop)) == "struck body"
    gauge_plate = work("100mncrw4", "local-torch", "oil")
    assert custom(gauge_plate, lead(stop), asked(stop)) == merit


@pytest.mark.parametrize(("duty", "most"), [("pressed face", 1.0), ("drive", SELDOM)])
def test_plate_too_hard_to_machine_is_cut_out_for_dies_alone(duty, most):
    wanted = asked(CASES[duty])
    plate = work("pre-hard-tool-plate-44-hrc", "prehard-bar", None, None, "prehard")
    assert custom(plate, lead(CASES[duty]), wanted) <= most


def test_tool_steel_is_left_soft_where_nothing_is_asked_of_it():
    slim = {f"part.section.{n}.size": "8 mm" for n in (0, 1)}
    bar, merits = work("115crv3", "as-bought", None, None), {}
    for duty, changes in (
        ("plain", {"zone.0.wear": "none", "zone.0.hardness": GONE, "part.feature": []}),
        ("sliding", CASES["sliding"]),
    ):
        wanted = asked({**changes, **slim, "load": {"impact": "none", "cycles": "static"}})
        found = resolved(wanted, CATALOG).leading
        assert duty_of(found, wanted) == duty
        merits[duty] = custom(bar, found, wanted)
    assert merits["sliding"] < SELDOM <= merits["plain"]


def test_a_slender_pilot_is_of_tool_steel_and_a_large_die_of_alloy_too():
    slim = {f"part.section.{n}.size": "8 mm" for n in (0, 1)}
    thin, thick = (
        custom(work("817m40", "through-furnace", "oil"), lead(die), asked(die))
        for die in ({**CASES["pressed face"], **slim}, CASES["pressed face"])
    )
    assert thin == SELDOM < thick == ALSO


@pytest.mark.parametrize(("severity", "merit"), [("light", ALSO), ("medium", SELDOM)])
def test_a_light_hammer_drives_gauge_plate_too(severity, merit):
    struck = {**CASES["struck edge"], "zone.0.severity": severity}
    stamp = work("100mncrw4", "local-torch", "oil")
    assert custom(stamp, lead(struck), asked(struck)) == merit


@pytest.mark.parametrize(("low", "merit"), [(60, SELDOM), (52, USUAL)])
def test_what_must_be_as_hard_as_it_gets_is_not_of_half_a_percent_of_carbon(low, merit):
    pin = {
        **CASES["sliding"],
        "zone.0.hardness": {"min": f"{low} HRC", "max": f"{low + 4} HRC"},
    }
    assert custom(work("c55", "through-torch", "water"), lead(pin), asked(pin)) == merit
    assert custom(work("115crv3", "through-torch", "water"), lead(pin), asked(pin)) == USUAL


@pytest.mark.parametrize(("duty", "merit"), [("pressed face", ALSO), ("sliding", USUAL)])
def test_a_die_is_soaked_in_the_furnace_that_stands_there(duty, merit):
    shop = {**CASES[duty], "workshop.heat": [{"source": "oxy-propane"}, {"source": "kiln"}]}
    torch = work("100mncrw4", "local-torch", "oil")
    assert custom(torch, lead(shop), asked(shop)) == merit
    assert custom(torch, lead(CASES[duty]), asked(CASES[duty])) == USUAL
    kiln = work("100mncrw4", "through-furnace", "oil", "kiln")
    assert custom(kiln, lead(shop), asked(shop)) == USUAL
