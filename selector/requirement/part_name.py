"""What a part's name says that it is: an edge, a gauge, a die, a spring, a tool for the ground.

The thing itself stands before what it is for, from or in, and last of the words that go
together: a pin gauge measures, the hinge pin of a narrow-gauge wagon does not.
"""

import re

# Behind these stands what a part is made from, for or in; after a figure "in" is inches.
_BESIDE = re.compile(
    r"(?<!\d )\b(?:from|for|to|in|on|with)\b|\b(?:of (?:a|an|the))\b", re.IGNORECASE
)
# Where one of these follows in the same words, what stands before says its kind alone.
_PIECES = (
    "bolt|nut|screw|stud|shaft|spindle|bush|bushing|bearing|gear|pinion|spring|lever|bracket|"
    "handle|holder|housing|clamp|guard|stand|case|box|wagon|engine|locomotive|railway"
)


def named(words: str, others: str = "") -> re.Pattern[str]:
    """Return the pattern of words that are not followed by a piece, or another that is none."""
    ends = _PIECES + ("|" + others if others else "")
    return re.compile(rf"\b(?:{words})\b(?![^,;(]*\b(?:{ends})s?\b)", re.IGNORECASE)


# What shears, pierces or coins by its corners under a press or a lever.
_PRESSES = re.compile(
    named(
        r"punch(?:es)?|dies?|shears?|croppers?|nibblers?|guillotines?|anvils?",
        "shank|set|plate|block|nut|shoe|bolster|cushion",
    ).pattern
    + r"|\bdraw(?:ing)?[- ]?(?:rings?|plates?)\b|\b(?:coining|embossing)\b"
    + r"|\bpress(?:[- ]brake)?\b[^,;(]*\btools?\b"
    + r"|\b(?:blank|pierc|cropp?|trimm|lanc|nick|notch|shear|crimp|louvre)(?:ing)?"
    + r"[- ](?:blade|tool|edge)s?\b",
    re.IGNORECASE,
)
# What measures or sets by its faces. Rails and wire have a gauge too, and are none.
_MEASURES = named(
    r"(?<!narrow-)(?<!standard-)(?<!broad-)(?<!\d in )(?<!\d mm )"
    r"(?<!track )(?<!rail )(?<!loading )(?<!marking )ga?uges?(?! plate)|type[- ]high|"
    r"setting (?:ring|plug|master|piece|block|disc)s?|parallels?|"
    r"v(?:ee)?[ -]*blocks?|sine bars?|"
    r"(?:not?[- ]?)?go[- ](?:end|pin|plug|ring|member|side)s?|"
    r"(?:test|proof|master|check(?:ing)?) (?:mandrel|bar|piece|pin|plug|ring|disc|square)s?|"
    r"straight[- ]?edges?|(?:micrometer|caliper|comparator) (?:anvil|face|jaw|pin)s?"
)
# What it is for, where that is to measure; a stand for that measures nothing itself.
_TO_MEASURE = re.compile(
    r"\bfor (?:measuring|gauging|checking|calibrating|inspecting)\b", re.IGNORECASE
)
_NO_MEASURE = re.compile(
    rf"\b(?:{_PIECES}|frame|table|arm|rail|rod|base|tray|rack)s?\b", re.IGNORECASE
)
# A tool that is nothing without its edge or point, whether or not that is among its features;
# what only holds or turns such a tool has none.
_NO_TOOL = "wrench|shank|arbor|wheel|block|pin"
_EDGED = named(
    r"(?:chisel|centre punch|center punch|axe|hatchet|adze|gouge|graver|burin|scriber|"
    r"scribing (?:block )?(?:needle|point)|plane iron|reamer|tap|d-bit|drill bit|"
    r"(?:star|rock) drill|hardy|"
    r"hot set|cold set|form tool|parting tool|turning tool|boring tool|countersink|counterbore|"
    r"broach|snips|nippers|pincers|spokeshave|drawknife|sickle|scythe|billhook|machete|"
    r"cleaver|auger|gimlet|awl|bradawl|mill bill|froe)s?",
    _NO_TOOL,
)
# What these words name has an edge, or is a plate: that lies in the part, not in its name.
_MAYBE_EDGED = named(
    r"(?:knife|knive|blade|scraper|cutter|shear|bolster|burr|hob|coulter)s?", _NO_TOOL
)
# A stretch that the shop calls so ends in an edge or a point.
_END_EDGED = re.compile(r"\b(?:(?:cutting )?edge|point|lip|tooth|teeth)s?\b", re.IGNORECASE)
# An edge that cuts metal, or cuts nothing but must be as hard as can be.
_CUTS_METAL = named(
    r"(?:graver|burin|reamer|tap|d-bit|drill bit|form tool|parting tool|turning tool|"
    r"boring tool|facing tool|fly[- ]?cutter|countersink|counterbore|hob|broach|rotary burr|"
    r"milling cutter|wheel cutter)s?",
    _NO_TOOL,
)
# What a blade, a cutter or a knife has when it cuts nothing.
_BLUNT = re.compile(
    r"\b(mix(?:ing|er)?|stirr(?:ing|er)|fan|turbine|propeller|agitator|paddle)\b", re.IGNORECASE
)
# What holds, guides or winds a spring is none; one leaf of a spring and a reed are.
_SPRING = named(
    r"(?:main|hair)?springs?|r-?clips?|circlips?|(?:snap|retaining) rings?|"
    r"reeds?(?: tongues?)?|(?:top|main|master|second|bottom|helper) lea(?:f|ves)",
    "pin|seat|hanger|perch|compressor|pliers|groove|anchor|anchorage|plate|hook|eye|cup|collar|"
    "retainer|tensioner|block|post|stop|cover|cap|guide|end|former|winder|mandrel|tester|maker|"
    "arbor|gauge|box|peg|button|buckle|saddle|knife",
)
_LEAF = named(r"lea(?:f|ves)")
# An end that is turned or ground to a form of its own.
_FORMED = re.compile(
    r"\b(?:ball|cone|conical|dom(?:e|ed|ing)|spherical|taper(?:ed)?|point(?:ed)?|nosed?|"
    r"burnish(?:er|ing)?|spinning)\b",
    re.IGNORECASE,
)
# A tool in the hand or the lathe that forms or polishes the work by rubbing on it.
_RUBS = named(
    r"burnish(?:er|ing)s?|planish(?:er|ing)s?|creasers?|slickers?|(?:metal[- ])?spinning|"
    r"(?:flaring|swaging|beading|bead|forming|bending|seaming|curling|tube) "
    r"(?:cone|roll|roller|former|mandrel|tool|pin|form)s?|tools?",
    "holder|post|rest|block|shank|tray|rack|arm|slide|carrier|wheel|lathe|jaw",
)
# What a mate is called that stones lie in.
_SOIL = re.compile(r"\b(?:soils?|earth|mud|clay|turf|gravel|ground|dirt|stubble)\b", re.I)
# What is cut at a bench, where no stones lie.
_AT_BENCH = re.compile(
    r"\b(?:paper|card|(?:card|mill|straw)?boards?|leather|hides?|cloth|canvas|felt|cork|rubber|"
    r"plastics?|veneers?|foil|sheets?|strips?|wires?|bread|dough|cheese|meat|fish|food)\b",
    re.IGNORECASE,
)
# A hammered tool that leaves its own form in the work, whatever its thickness.
_STAMPS = named(
    r"(?:rivet )?snaps?|punch(?:es)?|stamps?|chasers?|chasing tools?|matting tools?|"
    r"(?:letter|number|figure)s?(?: stamp| punch)?",
    "holder|block|arbor|shank|set|plate|bar|rod",
)
_FERROUS = re.compile(r"steel|iron\b", re.IGNORECASE)
_METAL = re.compile(
    r"steel|iron\b|brass|bronze|copper|alumini?um|metal|gunmetal|silver|gold|zinc|\bcast\b|"
    r"\bmild\b|tin-?plate|\b(?:car|body) (?:body|panels?|sheet)\b",
    re.IGNORECASE,
)
# Metal as it goes into a press, a die or a bending tool.
_WORKED = re.compile(
    r"\b(?:sheets?|strips?|plates?|blanks?|wires?|tubes?|rods?|bars?|stock|rivets?)\b",
    re.IGNORECASE,
)
# A pin, a bolt or a key that is there to break before something dearer does.
_BREAKS = re.compile(
    r"\bshear(?:ing)?[- ](?:pin|bolt|key|stud|screw|link)s?\b|\bsacrificial\b|"
    r"\bbreak(?:ing|away)?[- ](?:pin|bolt)s?\b|\bweak link\b",
    re.IGNORECASE,
)
# The size of teeth: a module in mm, a diametral pitch, or their number.
_MODULE = re.compile(r"\b(?:module|mod\.?|m)\s?(\d+(?:\.\d+)?)\b", re.IGNORECASE)
_PITCH = re.compile(r"\b(\d+(?:\.\d+)?)\s?(?:dp\b|diametral)", re.IGNORECASE)
_TEETH = re.compile(r"\b(\d+)\s?(?:t\b|teeth|tooth)", re.IGNORECASE)
# A spring that is bent sharp to its shape.
_FOLDED = re.compile(r"\b(v|u|hairpin|folded|bent)[- ]springs?\b", re.IGNORECASE)
# What digs or cuts the ground: stones strike it.
_GROUND = named(
    r"(?:plough|plow|share|tine|harrow|hoe|spade|shovel|mattock|pickaxe|coulter|digger|"
    r"bucket (?:tooth|teeth|edge)|grader|ripper|flail|mower (?:blade|section)|subsoiler|"
    r"rot[ao]vator|(?:rotary )?tiller|scarifier|ridger|mou?ldboard|landside|trencher|"
    r"(?:mower|mowing)[- ](?:knife|machine) sections?|topper blade|cultivator|"
    r"dibber|dibble|(?:turf|lawn|border)[- ](?:edger|edging iron|cutter)|aerator|"
    r"pug[- ]?mill|clay|earth|stump|ditch(?:er|ing)?)s?"
)
# These work the ground or, where they wear lightly, wood, mortar or a lock.
_MAYBE_GROUND = named(r"(?:pick|drag|edger|trowel|auger)s?")


def is_ferrous(material: str) -> bool:
    """Return whether a mate is said to be of steel or iron."""
    return _FERROUS.search(material) is not None


def is_metal(material: str) -> bool:
    """Return whether what is worked is metal."""
    return _METAL.search(material) is not None


def is_soil(material: str) -> bool:
    """Return whether a mate is ground that stones lie in."""
    return _SOIL.search(material) is not None


def is_bench_work(material: str) -> bool:
    """Return whether what is worked lies on a bench, not in the ground."""
    return _AT_BENCH.search(material) is not None and not is_soil(material)


def is_worked(material: str) -> bool:
    """Return whether a mate is metal as it goes into a press: sheet, strip, wire."""
    return _WORKED.search(material) is not None and is_metal(material)


def itself(name: str) -> str:
    """Return the words of a name that say what the part is, without what it is for or from."""
    said = [_BESIDE.split(phrase, maxsplit=1)[0].strip() for phrase in re.split("[,;(]", name)]
    return ", ".join(filter(None, said)) or name


def presses(name: str) -> bool:
    """Return whether it shears, pierces or coins under a press or a lever."""
    return _PRESSES.search(itself(name)) is not None


def measures(name: str) -> bool:
    """Return whether it measures or sets by its faces."""
    if _TO_MEASURE.search(name) and not _NO_MEASURE.search(itself(name)):
        return True
    return _MEASURES.search(itself(name)) is not None


def is_edged(name: str) -> bool:
    """Return whether it is a tool that is nothing without its edge or point."""
    return _EDGED.search(itself(name)) is not None and _BLUNT.search(name) is None


def may_be_edged(name: str) -> bool:
    """Return whether it has an edge if the rest of the part does not say otherwise."""
    return _MAYBE_EDGED.search(itself(name)) is not None and _BLUNT.search(name) is None


def ends_edged(stretch: str) -> bool:
    """Return whether what the shop calls a stretch of it is an edge or a point."""
    return _END_EDGED.search(stretch) is not None


def cuts_metal(name: str) -> bool:
    """Return whether its edge cuts metal."""
    return _CUTS_METAL.search(itself(name)) is not None


def is_spring(name: str) -> bool:
    """Return whether it is a spring, or one leaf for a spring."""
    words = itself(name)
    leaf = _LEAF.search(words) is not None and re.search(r"\bspring\b", name, re.I) is not None
    return leaf or _SPRING.search(words) is not None


def stamps(name: str) -> bool:
    """Return whether it is a hammered tool that leaves its own form in the work."""
    return _STAMPS.search(itself(name)) is not None


def is_formed(name: str) -> bool:
    """Return whether an end has a form of its own: a ball, a cone, a point."""
    return _FORMED.search(itself(name)) is not None


def is_folded(name: str) -> bool:
    """Return whether it is a spring that is bent sharp, as one leaf folded upon itself."""
    return _FOLDED.search(name) is not None


def module_mm(name: str, outside_mm: float) -> float | None:
    """Return the module of teeth that a name gives, None where it gives none.

    Parameters
    ----------
    name : str
        As "module 2.5", "20 DP" or, with the diameter over the teeth, "40 teeth".
    outside_mm : float
        Diameter over the teeth. [mm]

    Returns
    -------
    float or None
        Module. [mm]
    """
    if module := _MODULE.search(name):
        return float(module[1])
    if pitch := _PITCH.search(name):
        return 25.4 / float(pitch[1])
    teeth = _TEETH.search(name)
    return outside_mm / (int(teeth[1]) + 2) if teeth else None


def works_ground(name: str, *, lightly: bool = False) -> bool:
    """Return whether it works the ground, where stones strike it."""
    maybe = not lightly and _MAYBE_GROUND.search(name) is not None
    return maybe or _GROUND.search(name) is not None


def rubs(name: str) -> bool:
    """Return whether it is a tool that forms or polishes the work by rubbing on it."""
    return _RUBS.search(itself(name)) is not None


def breaks(name: str) -> bool:
    """Return whether it is there to break before something dearer does."""
    return _BREAKS.search(itself(name)) is not None
