"""The page of a batch says what is worth a line."""

from pathlib import Path

from selector.batch.record import BatchOut, LoadOut, RackOut, RowOut
from selector.batch.run import Batch
from selector.commands.batch_page import print_batch
from selector.commands.terminal import console


def page(capsys, **fields):
    given = {
        "schema_version": 1, "counts": {"no_option": 12}, "load_rule": "", "loads": (),
        "rack": RackOut(loss=0.05, rule="", bars=(), fewest=True, not_served=()),
        "rows": (), "cautions": (), **fields,
    }  # fmt: skip
    print_batch(Batch(BatchOut(**given), (Path("out/summary.csv"),), 12), console())
    return capsys.readouterr().out


def test_of_many_faults_the_first_are_shown_and_the_rest_counted(capsys):
    rows = tuple(
        RowOut(place=f"p{k}", part="p", quantity=1, reason="no_option", text="a\nb [bold]")
        for k in range(12)
    )
    said = page(capsys, rows=rows)
    assert "12 parts: 12 without an option. 12 worked out now." in said
    assert "p0: a b [bold]" in said
    assert "2 more are in the table." in said
    assert "Written: out/summary.csv" in said


def test_loads_are_said_as_an_instruction(capsys):
    places = tuple(f"p{k}" for k in range(9))
    given = {"range_c": (200.0, 250.0), "hold_min": 60.0, "places": places}
    loads = (
        LoadOut(kind="harden", by="muffle-furnace", then="oil", temperature_c=800.0, **given),
        LoadOut(kind="temper", by="oven", then="twice", temperature_c=225.0, **given),
    )
    said = " ".join(page(capsys, loads=loads).split())
    assert "Harden at 800 °C, 60 min (muffle-furnace), then oil: p0, p1, p2" in said
    assert "Temper at 225 °C, 60 min, twice, in the oven" in said
    assert "and 3 more" in said
