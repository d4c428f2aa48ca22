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


def test_a_square_with_a_shank_drives_and_a_plain_one_is_a_key():
    square = {**SLOT, "part.section.0": {"shape": "square", "size": 8, "length": 20}}
    drive = asked(square)
    assert is_drive_end(drive, drive.zone[0])
    key = drive.model_copy(
        update={"part": drive.part.model_copy(update={"section": drive.part.section[:1]})}
    )
    assert is_key(key, key.zone[0])
    assert not is_drive_end(key, key.zone[0])
