import numpy as np
import pytest

from selector.advice.output import advice_out
from selector.flame.output import figures
from selector.handover.chosen import chosen
from selector.handover.drawing.look import PAPER
from selector.handover.drawing.part_drawing import drawn
from selector.handover.option_marks import asked_marks, heated_mm, option_marks
from selector.wording import shown
from tests.dog import GONE, asked, only
from tests.once import advised
from tests.procedure import KILN

# Chromium chips under blows and at edges.
CALM = {"load.impact": "none", "part.feature": [], "zone.0.wear": "sliding"}
NOTHING = {"zone.0.hardness": GONE, "zone.0.wear": "none"}


def option_of(advice, route):
    return next(o for o in advice.options if o.treatment.route.slug == route)


def test_a_torched_part_has_a_field_and_its_records_figures():
    advice = advised(None, "42crmo4")
    option = option_of(advice, "local-torch")
    marks, job = option_marks(advice.job, option), advice.job
    record = advice_out(advice).options[advice.options.index(option)]
    read = figures(job, option)
    surface = option.judged.prediction.surface_hrc
    assert marks.bands[0].hrc == np.median(surface)
    assert record.hardness.surface.p50 == pytest.approx(np.median(surface), abs=1e-3)
    assert marks.said[0].startswith(shown(record.hardness.surface.p50))
    assert marks.bands[0].to_mm == read.hard_to_mm
    assert marks.heated_mm == (0.0, pytest.approx(30.0 + record.set_up.past_zone_mm, abs=0.1))
    assert f"{record.set_up.past_zone_mm:.0f} mm past" in marks.heat_words
    assert marks.field.hrc.shape == marks.field.peak_c.shape
    assert np.isfinite(marks.field.hrc).all()
    assert marks.limits_hrc[2:] == (48.0, 50.0, 56.0)
    assert heated_mm(job, option.treatment) == marks.heated_mm


def test_a_zone_at_the_other_end_is_drawn_there():
    changes = {"zone.0.section": [2], "zone.1.section": [1], "part.section.1.length": 30.0,
               "part.section.0.length": 150.0, "part.feature": []}  # fmt: skip
    advice = advised(changes, "42crmo4")
    option = option_of(advice, "local-torch")
    marks = option_marks(advice.job, option)
    assert marks.heated_mm[1] == 180.0
    assert marks.bands[0].to_mm == pytest.approx(180.0, abs=0.5)
    surface = marks.field.hrc[-1]
    assert surface[-1] > 45.0 > surface[0]
    assert list(marks.field.along_mm) == sorted(marks.field.along_mm)
    assert marks.notes[0].words.startswith("hard from")


def test_a_part_from_a_furnace_is_shaded_by_its_sections():
    advice = advised(KILN, "42crmo4")
    option = option_of(advice, "through-furnace")
    marks = option_marks(advice.job, option)
    assert marks.field is None
    assert [(b.from_mm, b.to_mm) for b in marks.bands] == [(0.0, 30.0), (30.0, 180.0)]
    assert marks.heated_mm is None
    assert "url(#" in drawn(advice.asked.part, marks, PAPER).svg


def test_a_case_lies_all_round():
    changes = {**KILN, "part.stock_removal": 0.0}
    advice = advised(changes, "16mncr5")
    option = option_of(advice, "pack-carburise")
    marks = option_marks(advice.job, option)
    (band,) = marks.bands
    assert (band.from_mm, band.to_mm) == (0.0, 180.0)
    assert band.depth_mm == option.judged.prediction.layer.depth_mm


@pytest.mark.parametrize(
    ("name", "steel"),
    [
        ("42crmo4/prehard/subcontract-chrome/none", "42crmo4"),
        ("41cralmo7-10/prehard/subcontract-nitride/none", "41cralmo7-10"),
    ],
)
def test_a_layer_laid_on_is_drawn_thin_over_steel_as_bought(name, steel):
    found = chosen(asked(CALM), only(steel), name)
    marks = option_marks(found.job, found.option)
    (band,) = marks.bands
    outcome = found.option.judged.prediction
    assert (band.from_mm, band.to_mm) == (0.0, 180.0)
    assert 0.0 < band.depth_mm == pytest.approx(found.record.hardness.depth_mm.p50, abs=1e-3)
    assert band.hrc > np.median(outcome.core_hrc) + 20.0
    # Too thin for hatching, so it is black from end to end.
    made = drawn(found.job.asked.part, marks, PAPER)
    assert f'fill="{PAPER.ink}" fill-rule="evenodd"' in made.svg


def test_bar_as_bought_is_hatched_only_where_it_is_as_hard_as_asked():
    for changes, bands in (({"zone.0.hardness": {"min": "150 HB"}}, 1), (NOTHING, 0)):
        advice = advised(changes, "42crmo4", "s235")
        option = next(o for o in advice.options if o.treatment.route.process == "none")
        marks = option_marks(advice.job, option)
        assert len(marks.bands) == bands
        assert marks.said == ()
        assert marks.heated_mm is None
        assert marks.rest.startswith("as bought, ")
        assert marks.step_of(marks.bought_hrc) == 0 or bands


def test_what_is_asked_is_drawn_before_anything_is_chosen():
    marks = asked_marks(advised(None, "42crmo4").job)
    assert [(b.from_mm, b.to_mm, b.hrc) for b in marks.bands] == [(0.0, 30.0, None)]
    assert marks.bands[0].words == "asked 50 to 56 HRC"
