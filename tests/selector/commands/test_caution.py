from selector.advice.caution import cautions_shown
from selector.commands.caution import first_lines, in_full


def test_the_first_screen_is_short_and_counts_the_rest(advice):
    known = cautions_shown(advice)
    *lines, rest = first_lines(known)
    first = [item for item in known if item.first_screen]
    assert sorted(lines) == sorted(item.brief for item in first)
    assert rest.startswith(f"{len(known) - len(first)} more")
    assert first_lines(known, heated=False)[-1].startswith("Those of the ways with heat")
    assert first_lines(first)[-1] == max(first, key=lambda item: item.rank).brief


def test_in_full_every_one_stands_at_its_step_with_its_id(advice):
    known = cautions_shown(advice)
    lines = in_full(known)
    assert len(lines) == len(known)
    for item, line in zip(known, lines, strict=True):
        assert line.startswith(f"{item.step}: ")
        assert line.endswith(f"[{item.id}]")
