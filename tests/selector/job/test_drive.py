from selector.job.demand import demands
from selector.job.drive import is_drive_end, is_key, turns_slot
from tests.dog import GONE, asked

SLOT = {
    "part.feature": GONE, "zone.0.hardness": GONE, "zone.0.wear": "none",
    "load.torque": "4 N m",
    "part.section.0": {"shape": "flat", "size": 1, "width": 6, "length": 10},
}  # fmt: skip


def test_a_thin_end_on_a_thicker_shank_turns_a_slot():
    assert turns_slot(asked(SLOT))
    assert not turns_slot(asked({**SLOT, "load.torque": GONE}))
    assert not turns_slot(asked({**SLOT, "part.section.0.length": 40}))
    fork = {"shape": "flat", "size": 12, "width": 40, "length": 30}
    assert not turns_slot(asked({**SLOT, "part.section.0": fork}))


def test_a_square_with_a_shank_drives_and_a_plain_one_is_a_key():
    square = {**SLOT, "part.section.0": {"shape": "square", "size": 8, "length": 20}}
    drive = asked(square)
    assert is_drive_end(drive, drive.zone[0])
    key = drive.model_copy(
        update={"part": drive.part.model_copy(update={"section": drive.part.section[:1]})}
    )
    assert is_key(key, key.zone[0])
    assert not is_drive_end(key, key.zone[0])


def test_a_square_drives_where_it_ends_the_part_and_no_thicker_than_what_is_beside_it():
    ends = {"part.feature": GONE, "zone.0.hardness": GONE, "load.torque": "90 N m"}
    square = {"shape": "square", "size": 20, "length": 60}

    def drives(*sections):
        zones = [{"section": [n + 1], "wear": "none"} for n in range(len(sections))]
        part = asked({**ends, "part.section": list(sections), "zone": zones})
        at = next(n for n, section in enumerate(sections) if section is square)
        return is_drive_end(part, part.zone[at])

    tip, shank = ({"shape": "round", "size": size, "length": 90} for size in (12, 25))
    assert drives(square, shank)
    assert drives(shank, square)
    assert not drives(tip, square)
    assert not drives(shank, square, shank)


def test_a_plain_square_called_a_chuck_key_drives():
    square = [{"shape": "square", "size": 8, "length": 20}]
    plain = {**SLOT, "part.section": square, "zone": [{"section": [1], "wear": "none"}]}
    called = asked({**plain, "part.name": "Chuck key"})
    assert is_drive_end(called, called.zone[0])
    bar = asked({**plain, "part.name": "Sunk key"})
    assert not is_drive_end(bar, bar.zone[0])


def test_a_blade_drawn_without_its_shank_turns_a_slot_if_it_is_called_so():
    blade = [{"shape": "flat", "size": 1, "width": 6, "length": 10}]
    alone = {**SLOT, "part.section": blade, "zone": [{"section": [1], "wear": "none"}]}
    assert turns_slot(asked({**alone, "part.name": "Screwdriver blade"}))
    assert not turns_slot(asked({**alone, "part.name": "Key"}))


def test_small_drives_are_tempered_to_blue_and_hexagon_keys_are_harder():
    """Winding squares of silver steel are blue, 54 HRC; hexagon keys about 50: practice."""

    def top(shape, size):
        end = {"shape": shape, "size": size, "length": 12}
        return demands(asked({**SLOT, "part.section.0": end}))[0].high_hrc

    assert top("square", 10) < top("square", 4) < top("hexagon", 4)
