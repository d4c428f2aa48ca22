"""Heat sources: what each can reach, and who watches it."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.heat_source import HeatSource

SOURCES = load_catalog().heat_sources


@pytest.mark.parametrize(("key", "wrong"), [("kind", "sun"), ("control", "nose")])
def test_a_word_outside_the_list_is_refused(key, wrong):
    with pytest.raises(ValidationError, match=rf"{key}\n.*input_value='{wrong}'"):
        HeatSource.model_validate({**SOURCES["forge"].model_dump(), key: wrong})


@pytest.mark.parametrize("slug", ["kitchen-oven", "hot-plate"])
def test_an_oven_tempers_and_never_hardens(slug):
    assert SOURCES[slug].ceiling_c.value < 400


@pytest.mark.parametrize("slug", SOURCES)
def test_an_open_flame_holds_heat_for_less_time_than_a_furnace(slug):
    source = SOURCES[slug]
    if source.kind == "flame":
        assert source.soak_max_min.value < SOURCES["muffle-furnace"].soak_max_min.value


def test_a_hand_torch_takes_the_smallest_bar():
    flames = {slug: source for slug, source in SOURCES.items() if source.kind == "flame"}
    assert min(flames, key=lambda slug: flames[slug].section_mm.value) == "hand-torch"
