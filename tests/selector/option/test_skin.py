from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.preparation import prepare
from selector.option.skin import (
    atmosphere,
    ground_mm,
    is_presumed_wrapped,
    skin,
    skin_mm,
    skinned,
)
from selector.option.zone_hardness import zone_hardness
from tests.dog import asked, work

CATALOG = load_catalog()
FURNACE = {"route": "through-furnace", "source": "muffle-furnace"}
SHOP = {"workshop.heat": [{"source": "muffle-furnace"}]}
FOIL = {**SHOP, "workshop.protect": ["foil"]}
SHIM = {
    "part.section.0": {"shape": "flat", "size": 0.25, "width": 20, "length": 30},
    "part.feature": [],
}


def near(changes=None):
    return resolved(asked({**SHOP, **(changes or {})}), CATALOG)


def surface(steel, changes=None):
    ready = prepare(work(steel, **FURNACE), near(changes))
    return float(np.median(zone_hardness(ready, Temper("oven", 200.0, 3600.0)).surface))


def test_an_open_furnace_leaves_a_soft_skin_that_a_torch_does_not():
    part = asked(SHOP)
    by_furnace, by_torch = (skin_mm(part, work("c45", **how)) for how in (FURNACE, {}))
    assert by_furnace > 0.1 > 0.05 > by_torch > 0


@pytest.mark.parametrize("kind", ["salt-bath", "none"])
def test_salt_and_no_heat_leave_no_skin(kind):
    source = CATALOG.heat_sources["salt-bath"] if kind == "salt-bath" else None
    treatment = replace(work("c45"), source=source)
    assert skin_mm(asked(), treatment) == 0
    assert skin(near(), treatment) is None


def test_what_a_part_is_in_goes_by_source_and_shop():
    furnace = work("c45", **FURNACE)
    assert atmosphere(furnace, asked(SHOP).workshop) == "open-furnace"
    assert atmosphere(furnace, asked(FOIL).workshop) == "pack"
    assert atmosphere(work("c45"), asked(FOIL).workshop) == "flame"
    assert atmosphere(work("c45", "as-bought", None, None), asked().workshop) is None


@pytest.mark.parametrize("steel", ["51crv4", "42crmo4"])
def test_a_bare_soak_lowers_the_surface_unless_it_is_foiled_or_ground(steel):
    bare = surface(steel)
    assert surface(steel, FOIL) > bare + 4
    assert surface(steel, {"part.stock_removal": 0.2}) > bare + 4


def test_what_nobody_soaks_bare_is_counted_as_wrapped():
    treatment = work("x100crmov5", "through-furnace", "air", "muffle-furnace")
    assert is_presumed_wrapped(treatment, asked(SHOP).workshop)
    assert not is_presumed_wrapped(treatment, asked(FOIL).workshop)
    assert not is_presumed_wrapped(work("c45", **FURNACE), asked(SHOP).workshop)
    found = skin(near(), treatment)
    assert found.bare_mm > 0.2 > 0.1 > found.soft_mm


def test_tool_steel_keeps_its_hardness_a_tenth_under_the_skin():
    found = skin(near(), work("100mncrw4", **FURNACE))
    assert found.loss_hrc < 1 < 10 < found.file_loss_hrc


def test_a_thick_part_is_soaked_longer_and_loses_more():
    sizes = {f"part.section.{n}.size": "60 mm" for n in (0, 1)}
    usual, thick = (
        skin_mm(asked({**SHOP, **more}), work("c45", **FURNACE)) for more in ({}, sizes)
    )
    # Whole minutes in steps of five: 25 for 25 mm, 60 for 60 mm, and the root of time.
    assert thick / usual == pytest.approx((60 / 25) ** 0.5)


def test_what_grinding_takes_off_is_not_left():
    found = skin(near({"part.stock_removal": 0.1}), work("c45", **FURNACE))
    assert found.left_mm == pytest.approx(found.soft_mm - 0.1)


def test_a_part_that_is_ground_is_left_something_for_it():
    part = asked({"part.finish_after": ["surface-grinder"]}).part
    assert ground_mm(part) == 0.2
    assert ground_mm(asked({"part.stock_removal": 0.05}).part) == 0.05
    assert ground_mm(asked().part) == 0.0


def test_a_thin_blade_loses_carbon_from_both_sides():
    treatment = work("c45", **FURNACE)
    thick, thin = (skin(near(changes), treatment) for changes in (None, SHIM))
    assert thin.loss_hrc > thick.loss_hrc + 1
    edged = near({"part.feature": [{"kind": "edge"}]})
    assert skin(edged, treatment).loss_hrc >= thick.loss_hrc


def test_a_soft_surface_has_less_to_lose():
    treatment, job = work("c45", **FURNACE), near()
    hard, soft = (skinned(np.full(job.count, hrc), job, treatment) for hrc in (58.0, 30.0))
    assert (58.0 - hard >= 30.0 - soft - 1e-9).all()
    assert np.median(58.0 - hard) > 1.5 * np.median(30.0 - soft)
