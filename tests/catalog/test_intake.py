import tomllib
from math import pi

import pytest

from catalog import CatalogError, load_catalog
from catalog.intake import price_file, price_lines, read_rows, stock_lines
from catalog.price import Prices

KNOWN = load_catalog()


def rows(tmp_path, text):
    path = tmp_path / "list.csv"
    path.write_text(text, encoding="utf-8")
    return read_rows(path)


def line(**row):
    (priced,) = price_lines({2: {"currency": "EUR", **row}}, KNOWN)
    return priced


@pytest.mark.parametrize("between", [",", ";", "\t"])
def test_any_separator_and_heads_in_any_case(tmp_path, between):
    text = between.join(("Steel", "PRICE")) + "\n" + between.join((" EN24T ", "9")) + "\n\n"
    assert rows(tmp_path, text) == {2: {"steel": "EN24T", "price": "9"}}


@pytest.mark.parametrize("text", ["", "name,price\nC45,3\n"])
def test_a_list_without_steels_is_refused(tmp_path, text):
    with pytest.raises(CatalogError, match="must name a column steel"):
        rows(tmp_path, text)


def test_a_file_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(CatalogError, match=r"none\.csv: .* must be a CSV file .*No such file"):
        read_rows(tmp_path / "none.csv")


def test_a_quote_that_is_not_closed_is_refused(tmp_path):
    with pytest.raises(CatalogError, match="must be a CSV file"):
        rows(tmp_path, 'steel,price\n"EN8,4\n')


@pytest.mark.parametrize(
    ("row", "per_kg"),
    [
        ({"price": "9.5"}, 9.5),
        ({"price": "9,5", "unit": "kg"}, 9.5),
        ({"price": "10", "unit": "m", "size": "20"}, 10 / (pi / 4 * 20**2 * 7.85e-3)),
        ({"price": "30", "unit": "bar", "size": "20 mm", "length": "3000"},
         10 / (pi / 4 * 20**2 * 7.85e-3)),
    ],
)  # fmt: skip
def test_a_price_comes_out_by_the_kg_whatever_its_unit(row, per_kg):
    assert line(steel="EN24T", **row).taken == ("817m40", pytest.approx(per_kg, abs=1e-3))


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ({"steel": "sliver steel", "price": "3"}, "Did you mean silver steel"),
        ({"steel": "drill rod", "price": "3"}, "may be 100MnCrW4 or"),
        ({"steel": "C45", "price": "3", "currency": "USD"}, "currency must be EUR"),
        ({"steel": "C45", "price": "x"}, "price must be a number above 0 (got 'x')"),
        ({"steel": "C45", "price": "-1"}, "price must be a number above 0"),
        ({"steel": "C45", "price": "3", "unit": "lb"}, "unit must be one of kg, m, bar"),
        ({"steel": "C45", "price": "3", "unit": "m"}, "size must be a number above 0"),
        ({"steel": "C45", "price": "30", "unit": "bar", "size": "8"}, "length must be"),
        ({"steel": "C45", "price": "30", "unit": "m", "size": "0.8"}, "look at unit and size"),
    ],
)
def test_a_line_is_refused_with_its_reason(row, said):
    found = line(**row)
    assert found.taken is None
    assert said in found.refused


def test_the_second_price_of_a_steel_is_refused():
    names = enumerate(("EN24", "817M40"), start=2)
    given = {n: {"steel": name, "price": "4", "currency": "EUR"} for n, name in names}
    first, second = price_lines(given, KNOWN)
    assert first.taken == ("817m40", 4.0)
    assert second.refused == "817m40 has a price in line 2"


def test_a_price_list_is_written_as_one_that_loads():
    lines = price_lines({2: {"steel": "EN24T", "price": "9.5", "currency": "EUR"}}, KNOWN)
    written = Prices.model_validate(tomllib.loads(price_file(KNOWN.prices, lines)))
    assert written.steel_per_kg == {**KNOWN.prices.steel_per_kg, "817m40": 9.5}
    assert (
        written.model_copy(
            update={"steel_per_kg": KNOWN.prices.steel_per_kg, "note": KNOWN.prices.note}
        )
        == KNOWN.prices
    )


def test_a_rack_is_looked_at_bar_by_bar():
    given = {
        2: {"steel": "drill rod"}, 3: {"steel": "foo"}, 5: {"steel": "C45", "size": "x"}, 6: {}
    }  # fmt: skip
    bars = stock_lines(given, KNOWN, lambda row: "no size" if row.get("size") == "x" else "")
    assert [item.taken is not None for item in bars] == [True, False, False, False]
    assert [item.number for item in bars] == [2, 3, 5, 6]
    assert bars[2].refused == "no size"
    assert bars[3].refused.startswith("'': no known steel.")


def test_a_line_keeps_its_number_after_a_blank_one(tmp_path):
    listed = rows(tmp_path, 'steel,price\nEN8,4\n\n"EN 24\nbar",5\nC45,3\n')
    assert list(listed) == [2, 5, 6]
