import contextlib
import shutil

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from selector.requirement import units
from selector.requirement.units import QUANTITIES, UnitError, hardness_hv, quantity
from tests.examples import few

# Exact by definition: 25.4 mm to the inch, 0.45359237 kg to the pound, 9.80665 m/s².
SAME = [
    ("length", "1 in", 25.4),
    ("length", '1"', 25.4),
    ("length", "1 3/8 in", 34.925),
    ("length", "1-3/8 in", 34.925),
    ("length", "1/2 in", 12.7),
    ("length", "40 thou", 1.016),
    ("length", "12mm", 12.0),
    ("length", ".5 cm", 5.0),
    ("temperature", "212 degF", 100.0),
    ("temperature", "212 °F", 100.0),
    ("temperature", "200 C", 200.0),
    ("temperature", "273.15 K", 0.0),
    ("torque", "1 lb ft", 1.3558179483),
    ("torque", "1 ft-lb", 1.3558179483),
    ("torque", "12 lb in", 1.3558179483),
    ("torque", "1 kgf m", 9.80665),
    ("torque", "90 Nm", 90.0),
    ("torque", "90 N·m", 90.0),
    ("torque", "1000 N mm", 1.0),
    ("force", "1 lbf", 4.4482216153),
    ("force", "1 kgf", 9.80665),
    ("energy", "1 ft lb", 1.3558179483),
    ("volume", "1 gal", 3.785411784),
    ("time", "1 h", 3600.0),
    ("days", "2 weeks", 14.0),
    ("mass", "1 lb", 0.45359237),
    ("gas flow", "800 g/h", 0.8),
    ("pressure", "1 N/mm2", 1.0),
    ("pressure", "1 tonf/in2", 15.4442563367),
]


@pytest.mark.parametrize(("kind", "text", "value"), SAME, ids=[t for _, t, _ in SAME])
def test_workshop_spelling_is_read(kind, text, value):
    assert quantity(text, kind) == pytest.approx(value, rel=1e-9, abs=1e-9)


def test_every_kind_reads_its_own_examples():
    for kind, (_, examples) in QUANTITIES.items():
        for text in examples.split(", "):
            assert quantity(text, kind) > 0, text


@given(
    st.floats(0.001, 1e5), st.sampled_from([("length", "in"), ("force", "lbf"), ("mass", "lb")])
)
def test_a_unit_scales(number, kind_unit):
    kind, unit = kind_unit
    one = quantity(f"1 {unit}", kind)
    assert quantity(f"{number!r} {unit}", kind) == pytest.approx(number * one)


BAD = [
    ("length", "12", "a length with its unit"),
    ("length", "", "number and unit"),
    ("length", "mm", "number and unit"),
    ("length", "12 kg", "a unit of length"),
    ("length", "12 parsnips", "a unit of length"),
    ("length", "1/0 in", "a unit of length"),
    ("length", "1 1/0 in", "a unit of length"),
    ("length", "5 (", "a unit of length"),
    ("length", "5 '''", "a unit of length"),
    ("length", "5 mm-", "a unit of length"),
    ("length", "5 mm**9**9**9**9", "a unit of length"),
    ("length", "5 " + "-" * 5000 + "mm", "a unit of length"),
    ("length", "1/" + "9" * 5000, "a unit of length"),
    ("torque", "75-100", "a torque as one figure, not a range"),
    ("torque", "75-100 N m", "a torque as one figure, not a range"),
    ("torque", "75 to 100 N m", "a torque as one figure, not a range"),
    ("torque", "90 lb", "a unit of torque"),
    ("temperature", "200", "a temperature with its unit"),
    ("energy", "12 mm", "an energy in a unit of energy"),
]


@pytest.mark.parametrize(("kind", "text", "rule"), BAD, ids=[t[:16] for _, t, _ in BAD])
def test_what_is_no_quantity_is_refused_with_an_example(kind, text, rule):
    with pytest.raises(UnitError, match=rule) as refused:
        quantity(text, kind)
    assert QUANTITIES[kind][1] in refused.value.next_step


@given(st.text(max_size=40), st.sampled_from(sorted(QUANTITIES)))
@example("5 @", "length")
@example("5 \\", "length")
@settings(max_examples=few(200))
def test_any_text_is_read_or_refused(text, kind):
    for written in (text, f"5 {text}"):
        with contextlib.suppress(UnitError):
            assert isinstance(quantity(written, kind), float)


def test_hardness_scales_agree_where_the_tables_meet():
    # ASTM E140 Table 1: 50 HRC beside 513 HV.
    assert hardness_hv("50 HRC") == hardness_hv(50) == hardness_hv("50") == 513
    assert hardness_hv("600 HV") == hardness_hv("600 HV10") == 600
    # ISO 18265 Table A.1: 285 HB beside 300 HV.
    assert hardness_hv("285 HB") == hardness_hv("285 HBW") == 300


def test_a_soft_mate_is_read_below_the_table_of_steel():
    # ISO 18265 Table A.1 ends at 76 HB beside 80 HV; annealed copper, white metal.
    assert hardness_hv("45 HB") == pytest.approx(45 * 80 / 76)
    assert hardness_hv("25 HB") < hardness_hv("75 HB") < hardness_hv("76 HB") == 80
    assert hardness_hv("145.04 ksi") == pytest.approx(hardness_hv("1000 MPa"), rel=1e-3)


@given(st.floats(20, 67), st.floats(0.1, 1))
def test_a_harder_figure_is_harder(hrc, more):
    assert hardness_hv(hrc + more) > hardness_hv(hrc)


@pytest.mark.parametrize(
    ("value", "rule"),
    [
        ("15 HRC", "20 HRC or more"),
        (19, "20 HRC or more"),
        ("70 HRC", "inside the conversion table"),
        ("2000 HV", "between 10 and 1500 HV"),
        ("4 HV", "between 10 and 1500 HV"),
        ("5 HB", "inside the conversion table"),
        ("50 HRA", "a hardness"),
        ("hard", "a hardness"),
        ("-5 HRC", "a hardness"),
        (float("nan"), "a hardness"),
        (float("inf"), "a hardness"),
    ],
)
def test_what_is_no_hardness_is_refused(value, rule):
    with pytest.raises(UnitError, match=rule):
        hardness_hv(value)


@pytest.fixture
def kept(tmp_path, monkeypatch):
    """Return an empty folder for the definitions, which are read as by a new process."""
    monkeypatch.setattr(units, "cache_folder", lambda: tmp_path)
    units._registry.cache_clear()
    yield tmp_path / "units"
    units._registry.cache_clear()


@pytest.fixture(scope="module")
def sound(tmp_path_factory):
    """Return the definitions as they are kept, made once."""
    place = tmp_path_factory.mktemp("sound")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(units, "cache_folder", lambda: place)
        units._registry.cache_clear()
        assert quantity("12 litre", "volume") == 12
        units._registry.cache_clear()
    return place / "units"


@pytest.mark.usefixtures("kept")
def test_an_account_without_a_home_reads_the_definitions_anew(monkeypatch):
    monkeypatch.setattr(units, "cache_folder", lambda: None)
    assert quantity("12 litre", "volume") == 12


@pytest.mark.parametrize("left", [b"", None, b"garbage" * 40, b"\x80\x04K*."], ids=str)
def test_damaged_definitions_are_thrown_away_and_made_anew(kept, sound, left):
    shutil.copytree(sound, kept)
    whole = {path: path.read_bytes() for path in kept.glob("*.pickle")}
    assert whole
    for path, sound in whole.items():
        path.write_bytes(sound[: len(sound) // 2] if left is None else left)
    for _ in range(2):
        units._registry.cache_clear()
        assert quantity("12 litre", "volume") == 12
    assert {path: path.stat().st_size for path in kept.glob("*.pickle")} == {
        path: len(sound) for path, sound in whole.items()
    }


def test_definitions_need_no_place_to_be_kept(kept):
    kept.parent.rmdir()
    kept.parent.write_text("a file where the folder should be", encoding="utf-8")
    assert quantity("12 litre", "volume") == 12


OURS = [
    (kind, spelling) for kind in sorted(QUANTITIES) for spelling in sorted(units.OURS[kind])
]


@pytest.mark.parametrize(("kind", "spelling"), OURS)
def test_our_own_unit_is_read_as_the_unit_library_reads_it(kind, spelling, monkeypatch):
    ours = [quantity(f"{number} {spelling}", kind) for number in (0.1, 12, 33.333, 850)]
    monkeypatch.setitem(units.OURS, kind, frozenset())
    assert [quantity(f"{number} {spelling}", kind) for number in (0.1, 12, 33.333, 850)] == ours
