import json

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from selector.requirement import argument
from selector.specimen import specimen
from selector.specimen.quenched import quenched
from selector.specimen.record import QuenchedOut, RangeOut, TemperedOut
from selector.specimen.tempered import tempered, thin_piece

CATALOG = load_catalog()
SECTION = argument.section("--section", "tube 30 x 12 mm")


@pytest.mark.parametrize("slug", sorted(CATALOG.steels))
def test_every_steel_of_the_catalogue_has_an_answer_that_can_be_read_back(slug, monkeypatch):
    # How finely diameters are tried is no matter of its form.
    monkeypatch.setattr(specimen, "TRIED_MM", specimen.TRIED_MM[::9])
    steel = CATALOG.steels[slug]
    found = quenched(CATALOG, steel, SECTION, CATALOG.media["oil"])
    text = found.model_dump_json()
    assert QuenchedOut.model_validate_json(text) == found
    assert "NaN" not in text
    assert bool(found.points) is (found.steel.hardens != "not")
    if found.points:
        after = tempered(thin_piece(CATALOG, steel), 3600.0, wanted_hrc=45.0)
        assert TemperedOut.model_validate(json.loads(after.model_dump_json())) == after
        for place in (*found.points, *after.rows):
            assert place.hrc.p05 <= place.hrc.p50 <= place.hrc.p95


def test_a_record_refuses_what_it_does_not_know():
    with pytest.raises(ValidationError, match="p60"):
        RangeOut(p05=1.0, p50=2.0, p95=3.0, p60=2.2)
