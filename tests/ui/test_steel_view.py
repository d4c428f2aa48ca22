import pytest

from catalog import load_catalog
from ui import steel_view


@pytest.mark.parametrize("slug", ["115crv3", "42crmo4", "s235"])
def test_names_composition_and_sources_stand_in_lines(slug):
    known = load_catalog()
    steel = known.steels[slug]
    for name in steel.designations.every():
        assert steel_view.e(name) in steel_view.names(steel)
    assert steel_view.composition(steel).count("<tr>") == len(steel.composition_wt_pct)
    assert "<tr>" in steel_view.sources(steel, known)
