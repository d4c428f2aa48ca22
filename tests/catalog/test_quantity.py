"""Bounds of credible values: a slip of a hundred is caught, every quantity has bounds."""

import pytest

from catalog import load_catalog
from catalog.heat_source import HeatSource
from catalog.quantity import BY_KEY, BY_UNIT, ELEMENT_MOST_WT_PCT, implausible, sourced
from catalog.steel import Steel
from catalog.values import Curve, Fact, Number, Span

ORIGIN = {"source": "own-estimate", "at": "test", "basis": "estimated", "seen": "memory"}


def steel(**update: object) -> Steel:
    return load_catalog().steels["115crv3"].model_copy(update=update)


def test_sourced_values_come_with_their_dotted_keys():
    loaded = dict(sourced(load_catalog().steels["115crv3"]))
    assert loaded["composition_wt_pct.C"].low == 1.1
    assert loaded["hardened.section_limit_mm.oil"].value == 8
    assert isinstance(loaded["tempered.curve_hrc"], Curve)
    assert isinstance(loaded["limitation.1.why"], Fact)


def test_a_value_alone_keeps_the_key_it_is_given():
    number = Number(value=1, **ORIGIN)
    assert list(sourced((number, "text"), "note")) == [("note.1", number)]


def test_every_value_of_the_shipped_catalogue_is_credible():
    known = load_catalog()
    for group in (known.steels, known.routes, known.media, known.heat_sources):
        for record in group.values():
            assert list(implausible(record)) == []


@pytest.mark.parametrize(
    ("element", "low", "high", "got"),
    [
        ("C", 110, 125, ["110", "125"]),
        ("C", 1.1, 2.6, ["2.6"]),
        ("Cr", 0.5, 31, ["31"]),
        ("P", -0.01, 0.03, ["-0.01"]),
        ("B", 0.1, 0.1, ["0.1", "0.1"]),
    ],
)
def test_content_of_an_element_has_a_most(element, low, high, got):
    held = {element: Span(min=low, max=high, **ORIGIN)}
    rule = f"must be between 0 and {ELEMENT_MOST_WT_PCT[element]:g}"
    assert list(implausible(steel(composition_wt_pct=held))) == [
        (f"composition_wt_pct.{element}", rule, value) for value in got
    ]


def test_a_name_that_is_no_element_is_reported():
    held = {"Xx": Span(max=0.1, **ORIGIN)}
    ((key, rule, got),) = implausible(steel(composition_wt_pct=held))
    assert (key, got) == ("composition_wt_pct.Xx", "Xx")
    assert rule.startswith("must be one of C, Si, Mn")


@pytest.mark.parametrize(
    ("points", "got"),
    [
        (((10, 64), (300, 57)), "10"),
        (((100, 64), (800, 20)), "800"),
        (((100, 71), (300, 57)), "71"),
        (((100, 64), (300, 5.7)), "5.7"),
    ],
)
def test_a_tempering_curve_has_bounds_both_ways(points, got):
    tempered = steel().tempered.model_copy(update={"curve_hrc": Curve(points=points, **ORIGIN)})
    ((key, _, value),) = implausible(steel(tempered=tempered))
    assert (key, value) == ("tempered.curve_hrc", got)


@pytest.mark.parametrize("bad", [0.0, -8.0, 800.0])
def test_sizes_are_positive_and_of_this_world(bad):
    limits = {"oil": Number(value=bad, **ORIGIN)}
    hardened = steel().hardened.model_copy(update={"section_limit_mm": limits})
    assert list(implausible(steel(hardened=hardened))) == [
        ("hardened.section_limit_mm.oil", "must be between 0.005 and 500", f"{bad:g}")
    ]


def test_a_table_key_goes_before_the_unit():
    forge: HeatSource = load_catalog().heat_sources["forge"]
    hot = forge.model_copy(update={"ceiling_c": Number(value=1700, **ORIGIN)})
    assert list(implausible(hot)) == [("ceiling_c", "must be between 100 and 1600", "1700")]


@pytest.mark.parametrize("bounds", [*BY_KEY.items(), *BY_UNIT.items()], ids=lambda b: b[0])
def test_bounds_are_a_range(bounds):
    low, high = bounds[1]
    assert low < high
