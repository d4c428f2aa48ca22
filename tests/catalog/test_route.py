"""A route says what it needs of the workshop."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.route import Route

ROUTE = load_catalog().routes["through-torch"].model_dump()


def route(**update: object) -> Route:
    return Route.model_validate({**ROUTE, **update})


def test_a_workshop_process_needs_heat():
    with pytest.raises(ValidationError, match="with a process needs heat_sources"):
        route(heat_sources=())


def test_work_sent_out_needs_no_heat_of_ours():
    assert route(place="subcontract", heat_sources=()).heat_sources == ()


@pytest.mark.parametrize("process", ["quench", "marquench", "austemper"])
def test_a_quench_needs_a_bath(process):
    with pytest.raises(ValidationError, match="a quench needs media"):
        route(process=process, media=())


@pytest.mark.parametrize(
    ("key", "wrong"),
    [
        ("temper", ("candle",)),
        ("conditions", ("molten",)),
        ("place", "garage"),
        ("extent", "half"),
        ("kind", "magic"),
    ],
)
def test_a_word_outside_the_list_is_refused(key, wrong):
    with pytest.raises(ValidationError, match=rf"{key}(\.0)?\n  Input should be '"):
        route(**{key: wrong})


def test_a_route_starts_from_some_condition():
    with pytest.raises(ValidationError, match=r"conditions\n.*at least 1"):
        route(conditions=())


@pytest.mark.parametrize("slug", load_catalog().routes)
def test_every_route_that_quenches_in_the_workshop_tempers(slug):
    loaded = load_catalog().routes[slug]
    if loaded.place == "workshop" and loaded.process in {"quench", "marquench", "case"}:
        assert loaded.temper
