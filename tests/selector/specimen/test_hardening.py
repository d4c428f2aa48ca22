import pytest

from catalog import load_catalog
from selector.specimen.hardening import hardening, why_not

CATALOG = load_catalog()


@pytest.mark.parametrize(
    ("slug", "what"),
    [
        ("c45", "itself"),
        ("hs6-5-2", "itself"),
        ("31crmo12", "itself"),
        ("hs2-9-1-8", "itself"),  # by a firm
        ("16mncr5", "core"),
        ("070m20", "core"),
        ("s235", "not"),  # its standard sets no least carbon
        ("x3nicomoti18-9-5", "not"),
        ("x5crni18-10", "not"),
        ("dowel-pin", "not"),
        ("unknown", "not"),
    ],
)
def test_what_a_quench_hardens(slug, what):
    assert hardening(CATALOG.steels[slug]) == what


@pytest.mark.parametrize(
    ("slug", "words"),
    [
        (
            "s235",
            (
                "mild steel (S235JR) is not hardened by a quench",
                "too little carbon",
                "takes a case",
            ),
        ),
        ("x3nicomoti18-9-5", ("hardens by ageing", "Aged 3 h: ", "54 HRC at 480 °C")),
        ("dowel-pin", ("Already hard", "bought ready hard, 58 to 64 HRC (din-6325)")),
        ("x5crni18-10", ("Austenitic",)),
    ],
)
def test_why_a_quench_hardens_nothing(slug, words):
    said = why_not(CATALOG.steels[slug])
    for word in words:
        assert word in said


def test_of_an_unknown_bar_it_is_not_said_that_no_quench_hardens_it():
    assert why_not(CATALOG.steels["unknown"]).startswith("Neither the hardening heat")
