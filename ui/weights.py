"""What matters to you: weights that move, and who is first by them; nothing is simulated."""

from collections.abc import Collection, Mapping
from typing import Any

import streamlit as st

from selector import Requirement
from selector.advice.record import ReweighedOut, TurnOut
from selector.advice.reweigh import reweighed
from selector.requirement.priority import CRITERIA, Priorities
from selector.wording import in_100
from ui import answer, cached, session
from ui.draft import put
from ui.labels import plain, words
from ui.option_name import beside, unplaced
from ui.piece import bullets, e, markup, small

_OWN = "own"
_PRESETS = ("balanced", "cheap", "safe hands", "quick", "wear", "toughness", _OWN)
# So many of the new order are named, so many turns told.
_NAMED, _TOLD = 3, 4


@st.fragment
def show(requirement: Requirement) -> None:
    """Show weights that can be moved, and the order by them.

    Parameters
    ----------
    requirement : Requirement
        What is asked. Its advice is large, and a session keeps what this is given.
    """
    advice = cached.advice(requirement)
    st.header("What matters to you", anchor=False)
    given = requirement.priorities
    now = given.preset or (_OWN if given.points or given.order else "balanced")
    # A value given at the start stands for what the advice was made with.
    chosen = st.radio(
        "Weigh it", _PRESETS, index=_PRESETS.index(now), horizontal=True, key="weights/preset",
        format_func=lambda name: words(name, "priorities.preset"),
    )  # fmt: skip
    priorities = _own(given) if chosen == _OWN else Priorities(preset=chosen)
    markup(beam(priorities))
    found = reweighed(cached.standing(requirement), priorities)
    names = {option.id: option for option in advice.options}
    if found.order[0] == advice.options[0].id:
        st.markdown(f"**{plain(advice.options[0].spoken)} stays first.**")
    else:
        st.markdown(f"**{plain(names[found.order[0]].spoken)} comes first by these weights.**")
    st.markdown(
        "\n".join(
            f"{n}. {plain(unplaced(names[key]))}; first {in_100(found.first[key])}"
            for n, key in enumerate(found.order[:_NAMED], start=1)
        )
    )
    small(
        "In the order of their average. How often each is first counts outcomes and weights "
        "about these: what often wins by little and now and then loses by much stands behind."
    )
    first = names[found.order[0]]
    called = {key: beside(option, first) for key, option in names.items()}
    bullets(_until(turn, called) for turn in _telling(found, called))
    st.button(
        "Take these weights", key="weights/take", on_click=_take, args=(priorities,),
        disabled=priorities.weights() == given.weights(),
    )  # fmt: skip


def beam(priorities: Priorities) -> str:
    """Return the weights as a beam cut by their shares, in 100; the heaviest stands out."""
    shares = {name: 100 * share for name, share in priorities.weights().items() if share > 0}
    most = max(shares.values())
    return (
        "<ul class='tw-beam' aria-label='Weights in 100'>"
        + "".join(
            f"<li style='flex-grow:{share:.0f}'{' class=tw-most' if share == most else ''}>"
            f"{e(words(name))} {share:.0f}</li>"
            for name, share in shares.items()
        )
        + "</ul>"
    )


def _own(given: Priorities) -> Priorities:
    """Ask for points for each criterion."""
    shares = given.weights()
    points: dict[Any, float] = {}
    with st.container(horizontal=True):
        for name in CRITERIA:
            points[name] = float(
                st.slider(
                    words(name), 0, 60, round(100 * shares[name]), key=f"weights/{name}",
                    width=270,
                )
            )  # fmt: skip
    if not sum(points.values()):
        st.markdown("Something must weigh: the weights of before are used.")
        return given
    return Priorities(points=points)


def _ends(turn: TurnOut, names: Collection[str]) -> list[tuple[float, str, str]]:
    """Return at which weights another one leads, which, and to which side."""
    # Where all or nothing else weighs is no weight that anyone gives.
    ends = ((turn.above, turn.first_above, "more"), (turn.below, turn.first_below, "less"))
    return [
        (end, beyond, how)
        for end, beyond, how in ends
        if end is not None
        and beyond is not None
        and beyond in names
        and 0 < round(100 * end) < 100
    ]


def _telling(found: ReweighedOut, names: Collection[str]) -> list[TurnOut]:
    """Return the nearest turns, those of the weights that need move least."""

    def away(turn: TurnOut) -> float:
        return min(abs(end - turn.now) for end, _, _ in _ends(turn, names))

    return sorted((turn for turn in found.turns if _ends(turn, names)), key=away)[:_TOLD]


def _until(turn: TurnOut, names: Mapping[str, str]) -> str:
    """Return until which weight the first stays first, and who is beyond."""
    said = [
        f"until it weighs {how} than {100 * end:.0f} in 100, then {names[beyond]}"
        for end, beyond, how in _ends(turn, names)
    ]
    return f"{words(turn.criterion)}, now {100 * turn.now:.0f}: first {'; '.join(said)}."


def _take(priorities: Priorities) -> None:
    """Have the part weighed so from now on."""
    kept = priorities.model_dump(mode="json", exclude_none=True)
    session.change(lambda draft: put(draft, "priorities", kept))
    answer.advise_again()
