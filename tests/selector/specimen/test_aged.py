import json

import numpy as np
import pytest

from catalog import load_catalog
from selector.commands import cli as commands
from selector.errors import OutOfRangeError
from selector.job.job import resolved
from selector.job.tempers import tempers
from selector.option.preparation import prepare
from selector.option.zone_hardness import zone_hardness
from selector.specimen.aged import aged
from tests.dog import asked, work

CATALOG = load_catalog()
BAR = CATALOG.steels["x5crnicunb16-4"]
HOUR = 3600.0


def test_each_published_ageing_is_a_row():
    rows = aged(CATALOG, BAR).rows
    assert [(row.temperature_c, round(row.hrc.p50)) for row in rows] == [
        (482.0, 44), (496.0, 42), (552.0, 38), (579.0, 36), (593.0, 35), (621.0, 33)
    ]  # fmt: skip
    assert all(row.hrc.p05 < row.hrc.p50 < row.hrc.p95 < row.hrc.p05 + 5.0 for row in rows)


def test_it_is_what_the_advice_forecasts_of_the_route():
    job = resolved(asked({"zone.0.hardness": {"min": "40 HRC", "max": "46 HRC"}}), CATALOG)
    treatment = work("x5crnicunb16-4", "age-harden", None, "muffle-furnace")
    part = zone_hardness(prepare(treatment, job), tempers(treatment, {})[0])
    assert aged(CATALOG, BAR).rows[0].hrc.p50 == pytest.approx(np.median(part.surface), abs=0.1)


def test_the_temperature_for_a_hardness_lies_between_the_rows():
    assert 496.0 < aged(CATALOG, BAR, wanted_hrc=40.0).wanted.temperature_c.p50 < 552.0


@pytest.mark.parametrize(("time_s", "at_c"), [(600.0, ()), (40 * HOUR, ()), (None, (300.0,))])
def test_what_is_not_published_is_refused(time_s, at_c):
    with pytest.raises(OutOfRangeError):
        aged(CATALOG, BAR, time_s, at_c=at_c)


@pytest.mark.parametrize("slug", [s for s, steel in CATALOG.steels.items() if steel.aged])
def test_every_aged_steel_has_its_rows_on_the_command_line(slug, cli):
    done = cli.invoke(commands, ["temper", slug, "--json"])
    assert done.exit_code == 0
    assert len(json.loads(done.stdout)["rows"]) == len(
        CATALOG.steels[slug].aged.curve_hrc.points
    )
