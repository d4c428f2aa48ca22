"""Loading: overlays, faults named by file and key, look-up by any designation."""

from pathlib import Path

import pytest

from catalog import CatalogError, load, load_catalog
from catalog.load import SHIPPED
from catalog.text import RULE

STEEL = (SHIPPED / "steels" / "c45.toml").read_text(encoding="utf-8")


def problems(folder: Path) -> list[str]:
    with pytest.raises(CatalogError, match=r"\(got|TOML") as caught:
        load_catalog(folder)
    assert str(caught.value) == "\n".join(caught.value.problems)
    return list(caught.value.problems)


def own(folder: Path, text: str, name: str = "steels/mine.toml") -> Path:
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return folder


def slipped(old: str, new: str) -> str:
    assert STEEL.count(old) == 1
    return STEEL.replace(old, new)


def test_the_shipped_catalogue_is_read_once():
    assert load_catalog() is load_catalog()


def test_the_catalogue_is_frozen():
    known = load_catalog()
    with pytest.raises(TypeError, match="item assignment"):
        known.steels["c45"] = known.steels["c55"]
    with pytest.raises(AttributeError, match="steels"):
        known.steels = {}


def test_a_user_folder_adds_and_replaces_files(tmp_path):
    own(tmp_path, slipped('name = "C45"', 'name = "Rack bar"'), "steels/c45.toml")
    own(tmp_path, slipped('name = "C45"', 'name = "Bar of 1987"'), "steels/old-bar.toml")
    known, shipped = load_catalog(tmp_path), load_catalog()
    assert known.steels["c45"].name == "Rack bar"
    assert known.steels["old-bar"].name == "Bar of 1987"
    assert set(known.steels) == {*shipped.steels, "old-bar"}
    assert list(known.steels) == sorted(known.steels)
    assert known.steels["c55"] == shipped.steels["c55"]


def test_laid_over_what_is_kept_or_read_together_it_is_one_catalogue(tmp_path, monkeypatch):
    """Together they are read where shipped files are faulty, so that all faults are listed."""
    own(tmp_path, slipped('name = "C45"', 'name = "Bar of 1987"'), "steels/old-bar.toml")
    laid_over = load_catalog(tmp_path)
    assert laid_over.steels["c55"] is load_catalog().steels["c55"]

    def faulty(*_):
        raise CatalogError(("c55.toml: kind: must be given (got nothing)",))

    monkeypatch.setattr(load, "kept", faulty)
    load._load.cache_clear()
    try:
        assert load_catalog(tmp_path) == laid_over
    finally:
        load._load.cache_clear()


def test_a_user_folder_adds_sources_and_families(tmp_path):
    own(tmp_path, '[mill-sheet]\ncitation = "Certificate of the mill"\n', "sources.toml")
    own(tmp_path, '[mild]\nname = "Soft bar"\n', "families.toml")
    known = load_catalog(tmp_path)
    assert known.sources["mill-sheet"].citation == "Certificate of the mill"
    assert known.families["mild"].name == "Soft bar"
    assert len(known.families) == len(load_catalog().families)


def test_a_family_that_no_file_holds_is_reported(tmp_path):
    astray = slipped('family = "', 'family = "nowhere-')
    (line,) = problems(own(tmp_path, astray))
    assert line.startswith("mine.toml: family: must be a key of families.toml (got nowhere-")


def test_the_last_of_several_folders_wins(tmp_path):
    first = own(tmp_path / "a", slipped('name = "C45"', 'name = "First"'), "steels/c45.toml")
    last = own(tmp_path / "b", slipped('name = "C45"', 'name = "Last"'), "steels/c45.toml")
    assert load_catalog(first, last).steels["c45"].name == "Last"
    assert load_catalog(last, first).steels["c45"].name == "First"


def test_a_user_price_list_replaces_the_shipped_one(tmp_path):
    text = (SHIPPED / "prices.toml").read_text(encoding="utf-8")
    own(tmp_path, text.replace('currency = "EUR"', 'currency = "CHF"'), "prices.toml")
    assert load_catalog(tmp_path).prices.currency == "CHF"


def test_a_missing_folder_is_reported(tmp_path):
    missing = tmp_path / "nowhere"
    assert problems(missing) == [f"{missing}: (folder): folder must exist (got nothing there)"]


def test_a_file_given_as_folder_is_reported(tmp_path):
    own(tmp_path, "", "prices.txt")
    assert problems(tmp_path / "prices.txt")[0].endswith("(got nothing there)")


def test_text_that_is_not_toml_is_reported(tmp_path):
    own(tmp_path, "name = C45\n")
    (line,) = problems(tmp_path)
    assert line.startswith("mine.toml: (whole file): must be UTF-8 TOML (Invalid value")


@pytest.mark.parametrize("encoding", ["latin-1", "utf-16"])
def test_a_wrong_encoding_is_reported(tmp_path, encoding):
    own(tmp_path, "")
    (tmp_path / "steels" / "mine.toml").write_bytes(STEEL.encode(encoding))
    (line,) = problems(tmp_path)
    assert line.startswith("mine.toml: (whole file): must be UTF-8 TOML ('utf-8' codec")


def test_an_empty_file_is_reported_and_not_passed_over(tmp_path):
    own(tmp_path, "")
    assert "mine.toml: name: must be given (got nothing)" in problems(tmp_path)


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        (
            "toughness =",
            "toughnes =",
            "mine.toml: toughnes: must be a field of this file (got 'medium')",
        ),
        (
            "C = { min = 0.42, max = 0.5,",
            "C = { min = 0.5, max = 0.42,",
            ("mine.toml: composition_wt_pct.C: min must not exceed max "
            "(0.5 > 0.42) (got {"),
        ),
        (
            "C = { min = 0.42, max = 0.5,",
            "C = { min = 42, max = 50,",
            "mine.toml: composition_wt_pct.C: must be between 0 and 2.5 (got 42)",
        ),
        (
            "ac1 = { min = 735, max = 735,",
            "ac1 = { min = 1355, max = 1355,",
            "mine.toml: temperature_c.ac1: must be between 600 and 900 (got 1355)",
        ),
        (
            "ac1 = { min = 735, max = 735,",
            'ac1 = { min = "735", max = 735,',
            "mine.toml: temperature_c.ac1.min: must be a number (got '735')",
        ),
        (
            "ac1 = { min = 735, max = 735,",
            "ac1 = { min = true, max = 735,",
            "mine.toml: temperature_c.ac1.min: must be a number (got True)",
        ),
        (
            "ac1 = { min = 735, max = 735,",
            "ac1 = { min = nan, max = 735,",
            "mine.toml: temperature_c.ac1.min: must be a finite number (got nan)",
        ),
        (
            'number = ["1.0503", "1.1191", "1.1201"]',
            "number = [1.0503]",
            "mine.toml: designations.number.1: must be text in quotes (got 1.0503)",
        ),
        (
            'kind = "medium-carbon"',
            'kind = "medium"',
            "mine.toml: kind: must be 'mild', 'free-cutting'",
        ),
        (
            '[hardened]\nquench = "water"',
            '[hardening]\nquench = "water"',
            "mine.toml: hardening: must be a field of this file (got {'quench'",
        ),
    ],
    ids=[
        "misspelt key", "reversed range", "hundred times too large", "Fahrenheit",
        "text for a number", "truth for a number", "not a number", "number for a name",
        "unknown word", "unknown table",
    ],
)  # fmt: skip
def test_a_fault_is_reported_with_file_key_rule_and_value(tmp_path, old, new, line):
    own(tmp_path, slipped(old, new))
    assert [fault for fault in problems(tmp_path) if fault.startswith(line)]


def test_a_value_without_a_source_is_refused(tmp_path):
    own(tmp_path, STEEL.replace('source = "lucefin-cards", at = "card C45E, MS", ', ""))
    assert [line.split(" (got")[0] for line in problems(tmp_path)] == [
        "mine.toml: temperature_c.ms.source: must be given",
        "mine.toml: temperature_c.ms.at: must be given",
    ]


def test_a_slug_inside_a_file_is_refused_because_the_name_of_the_file_is_it(tmp_path):
    own(tmp_path, 'slug = "c60"\n' + STEEL)
    assert problems(tmp_path) == ["mine.toml: slug: the file's name is the slug (got 'c60')"]


def test_a_name_that_would_steer_a_terminal_is_refused(tmp_path):
    own(tmp_path, slipped('name = "C45"', 'name = "C45\\u001b[31m"'))
    own(tmp_path, '["a\\u202eb"]\ncitation = "A book"\n', "sources.toml")
    assert problems(tmp_path) == [
        rf"mine.toml: name: must be {RULE} (got 'C45\x1b[31m')",
        rf"sources.toml: (table name): must be {RULE} (got 'a\u202eb')",
    ]


def test_a_fault_in_a_shared_file_names_its_entry(tmp_path):
    own(tmp_path, "[mill-sheet]\ncitation = 7\n", "sources.toml")
    own(tmp_path, 'bronze = "Bronze"\n', "families.toml")
    assert sorted(problems(tmp_path)) == [
        (
            "families.toml: bronze: must be a valid dictionary or instance of Family "
            "(got 'Bronze')"
        ),
        "sources.toml: mill-sheet.citation: must be text in quotes (got 7)",
    ]


def test_all_faults_of_all_files_come_in_one_pass(tmp_path):
    own(tmp_path, slipped("toughness =", "toughnes ="), "steels/a.toml")
    own(tmp_path, slipped("C = { min = 0.42, max = 0.5,", "C = { min = 0.5, max = 0.42,"))
    own(tmp_path, slipped("C = { min = 0.42, max = 0.5,", "C = { min = 42,"), "steels/b.toml")
    own(tmp_path, "a = ", "routes/broken.toml")
    own(tmp_path, "currency = 3\n", "prices.toml")
    loaded = problems(tmp_path)
    assert {line.split(":")[0] for line in loaded} == {
        "a.toml", "b.toml", "mine.toml", "broken.toml", "prices.toml",
    }  # fmt: skip
    assert "a.toml: toughness: must be given" in "\n".join(loaded)


@pytest.mark.parametrize(
    ("asked", "slug"),
    [
        ("EN 19", "709m40"),
        ("en19t", "709m40"),
        ("1.7225", "42crmo4"),
        ("17225", "42crmo4"),
        ("scm440", "42crmo4"),
        ("4140 prehard", "42crmo4"),
        ("Silver Steel", "115crv3"),
        ("BS1407", "115crv3"),
        ("gauge plate", "100mncrw4"),
        ("Ground Flat-Stock", "100mncrw4"),
        ("o1", "100mncrw4"),
        ("EN24T", "817m40"),
        ("EN 8", "080m40"),
        ("en3b", "070m20"),
        ("EN1A leaded", "11smnpb30"),
        ("12L14", "11smnpb30"),
        ("EN16T", "605m36"),
        ("HSS", "hs6-5-2"),
        ("x153crmov12", "x153crmov12"),
        ("17-4PH", "x5crnicunb16-4"),
        ("AISI 4140", "42crmo4"),
        ("SAE 1045", "c45"),
        ("AISI/SAE 52100", "100cr6"),
        ("DIN 1.7225", "42crmo4"),
        ("JIS SCM440", "42crmo4"),
        ("JIS G4053 SCM440", "42crmo4"),
        ("UNS G41400", "42crmo4"),
        ("W.Nr. 1.2210", "115crv3"),
        ("Werkstoff-Nr. 1.2510", "100mncrw4"),
        ("BS 970 708M40", "42crmo4"),
        ("BS 970 EN16T", "605m36"),
    ],
)
def test_a_steel_is_found_under_any_of_its_names(asked, slug):
    assert [steel.slug for steel in load_catalog().find(asked)] == [slug]


@pytest.mark.parametrize(
    "asked", ["", "  ", "unobtainium", "EN", "C4", "AISI", "DIN EN", "W.Nr. 9.9999", "SAE 30"]
)
def test_an_unknown_name_finds_nothing(asked):
    assert load_catalog().find(asked) == ()


def test_every_name_of_a_steel_finds_it():
    known = load_catalog()
    assert [
        (slug, name)
        for slug, steel in known.steels.items()
        for name in (slug, *steel.names())
        if slug not in {found.slug for found in known.find(name)}
    ] == []


def test_drill_rod_is_three_steels_and_none_of_them_silver_steel():
    known = load_catalog()
    rods = {steel.slug for steel in known.find("drill rod")}
    assert rods == {"c105u", "100mncrw4", "x100crmov5"}
    assert not rods & {steel.slug for steel in known.find("silver steel")}
    assert not rods & {steel.slug for steel in known.find("1.2210")}


def test_a_t_after_an_en_number_is_a_condition_and_no_nitrided_bar():
    (bar,) = load_catalog().find("EN16T")
    assert "prehard" in {condition.name for condition in bar.condition}
    assert bar.kind != "nitriding"
    assert not any("nitrided" in name.casefold() for name in bar.names())


def test_4140_may_be_annealed_or_prehard():
    (bar,) = load_catalog().find("4140")
    assert {"annealed", "prehard"} <= {condition.name for condition in bar.condition}


@pytest.mark.parametrize(
    ("one", "other"),
    [("EN8", "C45"), ("EN24", "4340"), ("EN24", "34CrNiMo6"), ("EN45", "EN47"), ("W1", "O1")],
)
def test_near_equivalents_stay_apart(one, other):
    (first,), (second,) = load_catalog().find(one), load_catalog().find(other)
    assert first.slug != second.slug
