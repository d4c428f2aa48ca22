"""What is meant by a written name: one look-up for the command line, the rack and the page."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from catalog.mark import parted
from catalog.steel import Steel, plain

# Whose name it is, which people write before it: "AISI 4140", "W.Nr. 1.2210", "BS 970 708M40",
# "SAE J403 1045", "GB/T 699 45". An EN number keeps its EN: EN 45 is no GB 45.
_SYSTEM = re.compile(
    # The number of a standard alone says whose name follows, or a system does, with or without.
    r"(?:bs\s)?en\s?(?:iso\s?)?\d{4,5}(?:-\d+)?(?::\d+)?\s+(?=\S)"
    r"|(?:(?:aisi|sae|astm|uns|din|iso|jis|afnor|nf|gost|euronorm|bs|gb(?:\s?/\s?t)?"
    r"|(?:werkstoff|mat(?:erial)?|wr?)[\s.-]*(?:nr|no|nummer|number)?[\s.:-]*(?=\d\.\d{4})"
    r")[\s.:-]*)+(?:(?:[jga]\s?\d{2,4}|a\s?35-\d+|970|17\d{3}|699|1222|1299|3077)"
    r"(?:-\d+)?(?::\d+)?\s+(?=\S))?"
)
# Letters before an American number, of how it was melted, or of stainless steel: C1018, SS304.
_PREFIX = re.compile(r"(?:[cem]|ss)[\s-]?(?=\d{3,5}[a-z]?$)")
# Words round a name that carries a number: "D2 tool steel", "W1 drill rod", "45 carbon".
_NOISE = frozenset(
    {
        "steel", "steels", "grade", "type", "carbon", "alloy", "tool", "stainless", "bar",
        "bars", "round", "rod", "flat", "square", "hex", "hexagon", "plate", "sheet", "strip",
        "stock", "billet", "drill", "ground", "gauge", "spring", "material", "tube", "shaft",
        "high", "speed", "bearing", "silver", "old", "new", "piece", "of", "a", "offcut",
        "stal", "сталь", "tgp",
    }
)  # fmt: skip
_PIECES = re.compile(r"[/,;()=]|\bor\b|\baka\b")
# Kinds that the trade calls by a word of its own.
_KINDS: Mapping[str, tuple[str, ...]] = {
    "spring steel": ("spring",),
    "case hardening steel": ("case-hardening",),
    "nitriding steel": ("nitriding",),
    "free cutting": ("free-cutting",),
    "free machining steel": ("free-cutting",),
    "hot work steel": ("hot-work-tool",),
    "oil hardening": ("oil-tool",),
    "water hardening": ("water-tool",),
    "air hardening": ("air-tool",),
    "maraging": ("maraging",),
}
Carriers = Mapping[str, list[tuple[str, Steel]]]
SUGGESTED = 3
# So many letters begin a name.
_BEGINS = 3
# A name this short is another name two letters away.
_SHORT = 5


@dataclass(frozen=True, slots=True)
class Meaning:
    """The steels a name means and the mark of condition after it; or what it may have meant."""

    steels: tuple[Steel, ...] = ()
    mark: str | None = None
    near: tuple[str, ...] = ()

    @property
    def did_you_mean(self) -> str:
        """The next step after a name that nothing carries."""
        if not self.near:
            return "`temperwright steels` lists them."
        return f"Did you mean {' or '.join(self.near)}? `temperwright steels` lists all."


def look_up(name: str, known: Carriers) -> Meaning:
    """Return what a written name means.

    In this order: the name as it stands, without its mark of condition, without the system
    whose name it is, without the words round it; a word for a kind of steel; each of several
    names given together. What nothing carries may be a letter or two away from a name.

    Parameters
    ----------
    name : str
        A name as people write it.
    known : mapping of str to list of tuple of str and Steel
        What is known, as `carriers` has it.

    Returns
    -------
    Found
        Each steel with the composition that the name stands for.
    """
    meaning = _whole(name, known) or _kind(name, known) or _together(name, known)
    return meaning or Meaning(near=_near(name, known))


def listed(
    text: str, steels: Iterable[Steel], known: Carriers, families: Mapping[str, str]
) -> tuple[Steel, ...]:
    """Return the steels that a text means by name, by family or kind, or by how names begin.

    Parameters
    ----------
    text : str
        As it is written; all steels where it says nothing.
    steels : iterable of Steel
        What is known.
    known : mapping of str to list of tuple of str and Steel
        The same as `carriers` has it.
    families : mapping of str to str
        What each family is called.

    Returns
    -------
    tuple of Steel
        Empty where nothing is meant.
    """
    every, key = tuple(steels), plain(text)
    if not key:
        return every
    meant = look_up(text, known).steels
    if meant:
        return meant
    groups = (
        lambda steel: (steel.family, steel.kind),
        lambda steel: families[steel.family].split(),
    )
    for words in groups:
        alike = tuple(s for s in every if key in map(plain, words(s)))
        if alike:
            return alike
    # Two letters begin too many names to mean any.
    return tuple(
        steel
        for steel in every
        if len(key) >= _BEGINS
        and any(plain(name).startswith(key) for name in (steel.slug, *steel.names()))
    )


def carriers(steels: Iterable[Steel]) -> Carriers:
    """Return the steels that carry each name, with the name as it is written.

    Parameters
    ----------
    steels : iterable of Steel
        What is known.

    Returns
    -------
    mapping of str to list of tuple of str and Steel
        By the name as `plain` has it.
    """
    carried: dict[str, list[tuple[str, Steel]]] = {}
    for steel in steels:
        spelt = {plain(name): name for name in (steel.slug, *steel.names()[::-1])}
        for key, name in spelt.items():
            carried.setdefault(key, []).append((name, steel))
    return carried


def _spellings(name: str) -> Iterator[tuple[str, str | None]]:
    """Yield a name and its mark, more and more of what stands round it taken off."""
    text = name.strip().casefold()
    system = _SYSTEM.match(text)
    bare = text[system.end() :] if system else text
    words = re.sub(r"[^\s\w.+/&-]", " ", bare).split()
    # A bar written by its words is no less the steel of its number.
    kept = [word for word in words if word not in _NOISE]
    left = " ".join(kept) if any(c.isdigit() for word in kept for c in word) else bare
    for spelt in dict.fromkeys((text, bare, left, _PREFIX.sub("", left))):
        yield spelt, None
        marked = parted(spelt)
        if marked is not None:
            yield marked
            yield _PREFIX.sub("", marked[0]), marked[1]


def _whole(name: str, known: Carriers) -> Meaning | None:
    """Return what a name means by its designation."""
    for spelt, mark in _spellings(name):
        carried = known.get(plain(spelt))
        if carried:
            return Meaning(tuple(steel.called_as(spelt) for _, steel in carried), mark)
    return None


def _kind(name: str, known: Carriers) -> Meaning | None:
    """Return the steels of a kind that the trade has a word for."""
    text = " ".join(re.split(r"[\s-]+", name.strip().casefold()))
    for word in (text, text.removesuffix(" steel"), f"{text} steel"):
        kinds = _KINDS.get(word, ())
        every = {s.slug: s for carried in known.values() for _, s in carried}
        steels = tuple(steel for steel in every.values() if steel.kind in kinds)
        if steels:
            return Meaning(steels)
    return None


def _together(name: str, known: Carriers) -> Meaning | None:
    """Return the steel that several names given together have in common: "EN24 (817M40)"."""
    pieces = [_whole(piece, known) for piece in _PIECES.split(name) if piece.strip()]
    given = [piece for piece in pieces if piece is not None]
    if not given or len(pieces) == 1:
        return None
    first = given[0]
    shared = [
        steel
        for steel in first.steels
        if all(steel.slug in {other.slug for other in piece.steels} for piece in given)
    ]
    mark = next((piece.mark for piece in given if piece.mark), None)
    return Meaning(tuple(shared), mark) if shared else None


def _near(name: str, known: Carriers) -> tuple[str, ...]:
    """Return the names that begin so, else those one or two letters away, the nearest first."""
    keys = {plain(spelt) for spelt, _ in _spellings(name)} - {""}
    begun: list[tuple[int, str]] = []
    alike: list[tuple[int, str]] = []
    for key, carried in known.items():
        for asked in keys:
            if len(asked) >= _BEGINS and key.startswith(asked):
                begun.append((len(key) - len(asked), carried[0][0]))
            most = 1 if min(len(asked), len(key)) < _SHORT else 2
            away = _steps(asked, key, most)
            if away is not None:
                alike.append((away, carried[0][0]))
    least = min((away for away, _ in alike), default=0)
    near = begun or [row for row in alike if row[0] == least]
    return tuple(dict.fromkeys(word for _, word in sorted(near)))[:SUGGESTED]


def _steps(one: str, other: str, most: int) -> int | None:
    """Return how many letters are wrong, missing, too many or swapped; None beyond `most`."""
    if abs(len(one) - len(other)) > most:
        return None
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, a in enumerate(one, start=1):
        after = [i]
        for j, b in enumerate(other, start=1):
            best = min(row[j] + 1, after[j - 1] + 1, row[j - 1] + (a != b))
            if i > 1 and j > 1 and a == other[j - 2] and one[i - 2] == b:
                best = min(best, before[j - 2] + 1)
            after.append(best)
        before, row = row, after
    return row[-1] if row[-1] <= most else None
