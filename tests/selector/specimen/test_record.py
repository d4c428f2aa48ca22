import json
from collections.abc import Iterator

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


def faults(slug: str) -> Iterator[str]:
    """Yield what is wrong with the answer on one steel."""
    steel = CATALOG.steels[slug]
    found = quenched(CATALOG, steel, SECTION, CATALOG.media["oil"])
    text = found.model_dump_json()
    if QuenchedOut.model_validate_json(text) != found:
        yield f"{slug}: read back as another"
    if "NaN" in text:
        yield f"{slug}: a number that is none"
    if bool(found.points) is not (found.steel.hardens != "not"):
        yield f"{slug}: hardens {found.steel.hardens}, {len(found.points)} points"
    if found.points:
        after = tempered(thin_piece(CATALOG, steel), 3600.0, wanted_hrc=45.0)
        if TemperedOut.model_validate(json.loads(after.model_dump_json())) != after:
            yield f"{slug}: tempered, read back as another"
        for place in (*found.points, *after.rows):
            if not place.hrc.p05 <= place.hrc.p50 <= place.hrc.p95:
                yield f"{slug}: {place.hrc}"


def test_every_steel_of_the_catalogue_has_an_answer_that_can_be_read_back(monkeypatch):
    # How finely diameters are tried is no matter of its form.
    monkeypatch.setattr(specimen, "TRIED_MM", specimen.TRIED_MM[::9])
    assert [fault for slug in CATALOG.steels for fault in faults(slug)] == []


def test_a_record_refuses_what_it_does_not_know():
    with pytest.raises(ValidationError, match="p60"):
        RangeOut(p05=1.0, p50=2.0, p95=3.0, p60=2.2)
