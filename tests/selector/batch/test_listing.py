"""What a batch is made from: a folder, a list, and what is wrong with either."""

import os

import pytest

from selector.batch.answer import requirement
from selector.batch.listing import listed, name_of
from selector.errors import RequirementError


def write(folder, name, text):
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_a_folder_gives_its_part_files_in_order_and_nothing_else(shop):
    write(shop, "workshop.toml", "name = 'whoever writes the letters'")
    write(shop, "notes.txt", "no part")
    (shop / "drawings.toml").mkdir()
    places = [task.place for task in listed(shop)]
    assert places == ["bush.toml", "key.toml", "pin.toml", "punch.toml"]


def test_what_cannot_be_read_carries_its_fault(shop):
    os.mkfifo(shop / "pipe.toml")
    (shop / "gone.toml").symlink_to(shop / "nowhere.toml")
    faults = {t.place: str(t.faults[0]) for t in listed(shop) if t.faults}
    assert set(faults) == {"pipe.toml", "gone.toml"}
    assert faults["pipe.toml"].startswith("file pipe.toml must be a plain file; got something")


def test_a_hostile_name_steers_nothing(shop):
    (shop / "a\x1b[31m\u202e.toml").write_text("x = 1", encoding="utf-8")
    (shop / os.fsdecode(b"\xff.toml")).write_text("x = 1", encoding="utf-8")
    places = [task.place for task in listed(shop)]
    assert r"a\x1b[31m\u202e.toml" in places
    assert r"\xff.toml" in places
    assert name_of("plain.toml") == "plain.toml"


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("nowhere", "PARTS must be a folder or a CSV file that exists; got "),
        ("", "at least one"),
    ],
)
def test_no_folder_and_an_empty_one_are_refused(tmp_path, name, said):
    with pytest.raises(RequirementError, match=said):
        listed(tmp_path / name)


def test_a_single_part_is_no_list(shop):
    with pytest.raises(RequirementError, match=r"list as CSV; got .*pin\.toml'.*advise"):
        listed(shop / "pin.toml")


def test_each_line_lays_its_fields_over_the_file_it_names(shop, tmp_path):
    text = (
        "Order;file;name;quantity;part.section.1.size;zone.1.hardness.max;part.section.2.shape\n"
        "A-7;parts/pin.toml;long pin;12;16;57 HRC;\n\n"
        "A-8;parts/bush.toml;;;;;\n"
    )
    long_pin, bush = listed(write(tmp_path, "list.csv", text))
    assert (long_pin.place, bush.place) == ("list.csv line 2", "list.csv line 4")
    assert (long_pin.carried, bush.carried) == ({"order": "A-7"}, {"order": "A-8"})
    part = requirement(long_pin).part
    assert (part.name, part.quantity, part.section[0].size) == ("long pin", 12, 16.0)
    assert requirement(bush) == requirement(listed(shop)[0])


def test_a_base_stands_under_every_line_that_names_no_file(shop, tmp_path):
    path = write(tmp_path, "list.csv", "name,part.section.1.size\nthin,8 mm\nthick,1/2 in\n")
    sizes = [requirement(t).part.section[0].size for t in listed(path, shop / "pin.toml")]
    assert sizes == pytest.approx([8.0, 12.7])
    with pytest.raises(
        RequirementError, match=r"nowhere\.toml must be a readable file; got No"
    ):
        listed(path, shop / "nowhere.toml")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("name\npin\n", "list.csv line 1 must be heads with a column file; got name. Add"),
        ("file,part.quantty\npin.toml,3\n", "got 'part.quantty'. Did you mean part.quantity?"),
        ("file,file\n", "each stands once; got file"),
        ("file\npin.toml,3\n", "line 2 must be at most 1 cells"),
        ("file\n", "a list of at least one part; got none"),
        ("", "a list of at least one part; got none"),
        ('file\n"pin', "a CSV file in UTF-8"),
    ],
)
def test_a_faulty_list_is_refused_with_its_line(tmp_path, text, said):
    with pytest.raises(RequirementError) as caught:
        listed(write(tmp_path, "list.csv", text))
    assert said in str(caught.value)


@pytest.mark.usefixtures("shop")
def test_a_line_without_its_file_is_at_fault_alone(tmp_path):
    path = write(tmp_path, "list.csv", "file,name\nparts/pin.toml,a\nnowhere.toml,b\n,c\n")
    sound, lost, none = listed(path)
    assert not sound.faults
    assert "file nowhere.toml must be a readable file; got No such file" in str(lost.faults[0])
    assert str(none.faults[0]).startswith(
        "list.csv line 4 file must be the name of a part file"
    )
