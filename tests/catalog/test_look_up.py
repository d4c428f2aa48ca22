"""What people type, and the steels they mean by it: no miss, and nobody's else's steel."""

import pytest

from catalog import load_catalog
from catalog.look_up import listed
from catalog.steel import plain

KNOWN = load_catalog()

# Written down before it was looked at how they come out: bars as they are chalked, ordered,
# drawn on old sheets and spoken of in five languages.
MEANT = {
    # British numbers, old and new, with and without what stands round them.
    "EN8": ["080m40"], "en 8": ["080m40"], "EN-8": ["080m40"], "080M40": ["080m40"],
    "EN9": ["c55"], "EN16": ["605m36"], "EN19": ["709m40"], "709M40": ["709m40"],
    "EN19A": ["42crmo4"], "EN24": ["817m40"], "EN24 steel": ["817m40"],
    "BS970 605M36": ["605m36"], "BS 970 708M40": ["42crmo4"], "EN31": ["100cr6"],
    "EN32": ["080m15"], "EN36": ["655m13"], "EN40B": ["722m24"], "EN41B": ["41cralmo7-10"],
    "EN42": ["c75s"], "EN45": ["250a53"], "EN47": ["51crv4"], "EN48": ["5160"],
    "EN3B": ["070m20"], "EN1A": ["11smn30"], "EN1A leaded": ["11smnpb30"],
    "EN58J": ["x5crnimo17-12-2"], "EN24 (817M40)": ["817m40"], "EN8 / 080M40": ["080m40"],
    # American numbers.
    "AISI 4140": ["42crmo4"], "SAE 4140": ["42crmo4"], "4140 steel": ["42crmo4"],
    "C1018": ["070m20"], "C1045": ["c45"], "SAE J403 1045": ["c45"], "1018 CRS": ["070m20"],
    "UNS G41400": ["42crmo4"], "E52100": ["100cr6"], "52100": ["100cr6"],
    "12L14": ["11smnpb30"],
    "1095": ["c100s"], "1084": ["1084"], "1080": ["1084"], "5160": ["5160"], "9260": ["9260"],
    "8620": ["20nicrmo2-2"], "4340": ["4340"], "4130": ["4130"], "chromoly": ["4130"],
    "5140": ["5140"], "3310": ["3310"], "A36": ["s235"], "ASTM A36": ["s235"],
    "O1": ["100mncrw4"], "O-1": ["100mncrw4"], "O1 tool steel": ["100mncrw4"],
    "tool steel O1": ["100mncrw4"], "O2": ["90mncrv8"], "A2": ["x100crmov5"],
    "D2 flat bar": ["x153crmov12"], "W1": ["c105u"], "W1 drill rod": ["c105u"],
    "S1": ["s1"], "S7": ["50crmov13-15"], "L6": ["l6"], "H13": ["x40crmov5-1"],
    "M2": ["hs6-5-2"], "P20": ["p20"], "304": ["x5crni18-10"],
    "SS304": ["x5crni18-10"], "stainless 316": ["x5crnimo17-12-2"],
    "type 410": ["x12cr13"], "440C": ["x105crmo17"], "17-4PH": ["x5crnicunb16-4"],
    "17-4 PH": ["x5crnicunb16-4"], "17-4": ["x5crnicunb16-4"],
    # European names and numbers.
    "42CrMo4": ["42crmo4"], "1.7225": ["42crmo4"], "W.Nr. 1.2210": ["115crv3"],
    "Wr. Nr. 1.2842": ["90mncrv8"], "Werkstoff-Nr. 1.4301": ["x5crni18-10"],
    "DIN 115CrV3": ["115crv3"], "DIN 17200 Ck45": ["c45"], "EN 10083-2 C45E": ["c45"],
    "EN ISO 4957 X153CrMoV12": ["x153crmov12"], "St37": ["s235"], "S355": ["s355j2"],
    "1.2510": ["100mncrw4"], "95MnWCr5": ["100mncrw4"], "1.2714": ["55nicrmov7"],
    "45WCrV7": ["s1"], "C67S": ["c67s"], "60Cr3": ["5160"], "56Si7": ["56si7"],
    "1.2311": ["40crmnmo7"], "1.2842 / O2": ["90mncrv8"],
    # Japan, China, France.
    "SCM440": ["42crmo4"], "JIS G4053 SCM440": ["42crmo4"], "S45C": ["c45"], "SUJ2": ["100cr6"],
    "JIS SKD11": ["x153crmov12"], "SKT4": ["55nicrmov7"], "SUS304": ["x5crni18-10"],
    "JIS SK3": ["c105u"], "GB 45": ["c45"], "45#": ["c45"], "45 carbon": ["c45"],
    "GB/T 699 45": ["c45"], "40Cr": ["5140"], "GCr15": ["100cr6"], "Cr12MoV": ["x153crmov12"],
    "60Si2Mn": ["9260"], "Q235": ["s235"], "T8": ["c80u"], "T10": ["c105u"],
    "AFNOR XC48": ["c45"], "42CD4": ["42crmo4"], "100C6": ["100cr6"], "35NCD6": ["34crnimo6"],
    # What the trade says.
    "silver steel": ["115crv3"], "drill rod": ["c105u", "100mncrw4", "x100crmov5"],
    "gauge plate": ["100mncrw4"], "gage plate": ["100mncrw4"], "mild steel": ["070m20"],
    "bright mild steel": ["070m20"], "free-cutting mild steel": ["11smn30"],
    "key steel": ["c45"], "keysteel": ["c45"], "ball-bearing steel": ["100cr6"],
    "ball bearing steel": ["100cr6"], "bearing steel": ["100cr6"],
    "high-speed steel": ["hs6-5-2"], "HSS": ["hs6-5-2"], "stressproof": ["1144"],
    "blue spring steel": ["c67s", "c75s"], "leaf spring": ["5160"],
    "case-hardening mild steel": ["c15"], "linear shaft": ["linear-shaft"],
    "dowel pins": [], "unknown": ["unknown"], "scrap": ["unknown"],
    "spring steel": [
        "15n20", "250a53", "5160", "51crv4", "52crmov4", "54sicr6", "55cr3", "56si7", "65mn",
        "9260", "c67s", "c75s", "music-wire",
    ],
    "nitriding steel": [
        "31crmo12", "31crmov9", "34cralni7-10", "41cralmo7-10", "722m24", "897m39", "905m31",
    ],
    # What lies in the scrap box, and what is bought ready.
    "coil spring": ["old-coil-spring"], "half shaft": ["old-axle"], "allen key": ["hex-key"],
    "8.8 bolt": ["bolt-8.8"], "rebar": ["reinforcing-bar"], "cast iron": ["cast-iron"],
    # A second round, written down in the same way: spaces, dashes, letters of either size, old
    # numbers of all systems, Russian in both alphabets; what is not in the catalogue stays so.
    "en 24 t": ["817m40"], "EN 24T": ["817m40"], "En16M": ["606m36"], "en30b": ["835m30"],
    "EN25": ["826m40"], "EN26": ["826m40"], "EN354": ["820m17"], "EN36C": ["832m13"],
    "EN39B": ["835m15"], "EN40C": ["897m39"], "EN111": ["640m40"], "EN17": ["608m38"],
    "EN18": ["41cr4"], "en8d": ["080a42"], "EN8M": ["212a42"], "EN15": ["150m36"],
    "EN14A": ["150m19"], "EN56A": ["x12cr13"], "EN56AM": ["x12crs13"], "EN57": ["x17crni16-2"],
    "EN58M": ["x8crnis18-9"], "EN1APB": ["11smnpb30"], "080A15": ["080m15"],
    "BS 1407": ["115crv3"], "aisi-4140": ["42crmo4"], "41l40": [], "1045CD": ["c45"],
    "G10450": ["c45"], "uns t30402": ["x153crmov12"], "T31501": ["100mncrw4"],
    "SAE1144": ["1144"], "etd 150": [], "1018": ["070m20"], "1020": ["070m20"],
    "1040": ["080m40"], "1060": ["c60"], "1075": ["c75s"], "6150": ["51crv4"],
    "52100 bearing steel": ["100cr6"], "303": ["x8crnis18-9"], "S30300": ["x8crnis18-9"],
    "316L": ["x2crnimo17-12-2"], "416": ["x12crs13"], "420": ["x30cr13"],
    "431": ["x17crni16-2"], "630": ["x5crnicunb16-4"], "W2": ["100v1"],
    "A6 tool steel": ["a6"], "D3": ["x210cr12"], "O6": ["o6"], "S5": ["s5"],
    "h-13": ["x40crmov5-1"], "M42": ["hs2-9-1-8"], "M35": ["hs6-5-2-5"],
    "maraging 300": ["x3nicomoti18-9-5"], "c300": ["x3nicomoti18-9-5"], "1.0503": ["c45"],
    "1.1191": ["c45"], "1.7131": ["16mncr5"], "1.6582": ["34crnimo6"], "1.3505": ["100cr6"],
    "1.2379": ["x153crmov12"], "1.2767": ["45nicrmo16"], "1.2083": ["x40cr14"],
    "1.4305": ["x8crnis18-9"], "1.4404": ["x2crnimo17-12-2"], "1.4112": ["x90crmov18"],
    "1.4034": ["x46cr13"], "1.0715": ["11smn30"], "9SMnPb28": ["11smnpb30"],
    "9SMn28": ["11smn30"], "Ck15": ["c15"], "Ck60": ["c60"], "50CrV4": ["51crv4"],
    "X155CrVMo12-1": ["x153crmov12"], "90MnV8": ["90mncrv8"], "St52": ["s355j2"],
    "St 37-2": ["s235"], "ST52-3": ["s355j2"], "S355J2+N": ["s355j2"], "C45E+QT": ["c45"],
    "c 45": ["c45"], "42 CrMo 4": ["42crmo4"], "34crnimo6v": ["34crnimo6"],
    "SCM415": ["18crmo4"], "SNCM439": ["4340"], "SCr440": ["41cr4"], "SUP9": ["55cr3"],
    "SUP10": ["51crv4"], "SKS3": ["100mncrw4"], "SKH51": ["hs6-5-2"], "SKD61": ["x40crmov5-1"],
    "SUS303": ["x8crnis18-9"], "SUS420J2": ["x30cr13"], "SUM24L": ["11smnpb30"],
    "SS400": ["s235"], "s 50 c": ["c50"], "9CrSi": ["90crsi5"], "65Mn": ["65mn"],
    "20CrMnTi": [], "T12": [], "Q345": ["s355j2"], "38CrMoAl": ["41cralmo7-10"],
    "20Cr13": ["x20cr13"], "CrWMn": ["105wcr6"], "40X": ["5140"], "ШХ15": ["100cr6"],
    "ShKh15": ["100cr6"], "U8": ["c80u"], "U10A": ["c105u"], "65G": ["65mn"], "60S2": ["9260"],
    "20X13": ["x20cr13"], "45Kh": [], "30KhGSA": [], "KhVG": ["105wcr6"], "9KhS": ["90crsi5"],
    "X12MF": ["x153crmov12"], "stal 45": ["c45"], "XC38": ["c35"], "XC18": ["070m20"],
    "16NC6": [], "Z160CDV12": ["x153crmov12"], "90MV8": ["90mncrv8"], "30CND8": ["30crnimo8"],
    "Z30C13": ["x30cr13"], "cold rolled steel": ["070m20"], "crs": ["070m20"],
    "hot rolled": [], "bms": ["070m20"], "music wire": ["music-wire"],
    "piano wire": ["music-wire"], "old file": ["old-file"], "truck axle": ["old-axle"],
    "railway line": ["rail-steel"], "saw blade": ["old-saw-blade"], "hex key": ["hex-key"],
    "grade 8 bolt": [], "cap screw": [], "hss blank": ["hss-blank"],
    "lathe tool blank": ["hss-blank"], "bearing race": ["old-bearing-race"],
    "re-bar": ["reinforcing-bar"], "hardox 450": [], "hardox 500": ["wear-plate-500"],
    "ar400": ["wear-plate-400"], "toolox 44": ["pre-hard-tool-plate-44-hrc"],
    "precision ground stock": ["100mncrw4"], "ground flat stock": ["100mncrw4"],
    "carbon drill rod": ["c105u"], "chrome rod": ["chromed-bar"], "b7": ["b7-studding"],
    "studding b7": ["b7-studding"], "stub's steel": ["115crv3"], "stubs steel": ["115crv3"],
    "carbon steel": [], "blue tempered strip": ["c67s", "c75s"], "clock spring": [],
    "shim steel": [], "leaded steel": ["11smnpb30", "11smnpb37"], "chromoly tube": ["4130"],
    "chrome moly": ["4130"], "stainless": [], "tool steel": [],
    # A third round: what the first two left out of each system and of the scrap box.
    "EN5": ["c30"], "EN6": ["c30"], "080M30": ["c30"], "070M55": ["c55"], "080M50": ["c50"],
    "230M07": ["11smn30"], "212M36": ["212a42"], "EN36A": ["655m13"],
    "805M20": ["20nicrmo2-2"], "EN32B": ["080m15"], "EN34": ["4620"], "EN44": ["c100s"],
    "EN43A": ["c50"], "EN362": ["20nicrmo2-2"], "EN100": ["8640"], "EN110": ["36crnimo4"],
    "En 45A": ["250a53"], "1010": ["c10"], "1030": ["c30"], "1035": ["c35"], "1050": ["c50"],
    "1055": ["c55"], "1074": ["c75s"], "1215": ["11smn30"], "1141": ["1141"], "4142": ["4142"],
    "4150": ["50crmo4"], "8640": ["8640"], "E4340": ["4340"], "9310": ["9310"],
    "300M": ["300m"], "Nitralloy 135M": ["41cralmo7-10"], "D6": ["x210crw12"],
    "H11": ["x37crmov5-1"], "H21": ["x30wcrv9-3"], "440B": ["x90crmov18"], "440A": [],
    "AEBL": ["aeb-l"], "15-5PH": ["x5crnicu15-5"], "18-8": ["x5crni18-10"],
    "304L": ["x2crni18-9"], "321": [], "A572-50": ["s355j2"], "W110": [], "T1": [],
    "1.1141": ["c15"], "1.0401": ["c15"], "1.0301": ["c10"], "1.0577": ["s355j2"],
    "1.0038": ["s235"], "1.6511": ["36crnimo4"], "1.8159": ["51crv4"], "1.8519": ["31crmov9"],
    "1.8550": ["34cralni7-10"], "1.5752": ["655m13"], "14NiCr14": ["655m13"],
    "1.2343": ["x37crmov5-1"], "1.2080": ["x210cr12"], "1.2067": ["102cr6"],
    "1.4122": ["x39crmo17-1"], "1.4116": ["x50crmov15"], "1.4571": [], "20MnCrS5": ["20mncr5"],
    "16MnCrS5": ["16mncr5"], "41CrS4": ["41cr4"], "34CrAlNi7": ["34cralni7-10"],
    "55Si7": ["56si7"], "11SMnPb37": ["11smnpb37"], "SCM435": ["34crmo4"],
    "SNCM220": ["20nicrmo2-2"], "SACM645": ["41cralmo7-10"], "SK5": ["sk85"],
    "SUS440C": ["x105crmo17"], "SUS416": ["x12crs13"], "SKD1": ["x210cr12"],
    "SKD12": ["x100crmov5"], "SKD5": ["x30wcrv9-3"], "SUP9A": ["5160"], "35CrMo": ["34crmo4"],
    "50CrVA": ["51crv4"], "Cr12": ["x210cr12"], "T8A": ["c80u"], "3Cr13": ["x30cr13"],
    "9SiCr": ["90crsi5"], "40CrNiMoA": ["4340"], "20CrNiMo": ["20nicrmo2-2"], "W18Cr4V": [],
    "4Cr5MoSiV1": ["x40crmov5-1"], "38CrMoAlA": ["41cralmo7-10"], "35CD4": ["34crmo4"],
    "25CD4": ["25crmo4"], "Z6CN18-09": ["x5crni18-10"], "Z38CDV5": ["x37crmov5-1"],
    "55S7": ["56si7"], "50CV4": ["51crv4"], "Z100CDV5": ["x100crmov5"], "16MC5": ["16mncr5"],
    "20NCD2": ["20nicrmo2-2"], "S250Pb": ["11smnpb30"], "silversteel": ["115crv3"],
    "ball race": ["old-bearing-race"], "socket cap screw": ["bolt-12.9"],
    "grub screw": ["set-screw-45h"], "wrist pin": ["gudgeon"], "piston pin": ["gudgeon"],
    "hydraulic rod": ["chromed-bar"], "wear plate": ["wear-plate-400", "wear-plate-500"],
    "Hardox": ["wear-plate-400", "wear-plate-500"], "railroad track": ["rail-steel"],
    "torsion bar": ["old-coil-spring"], "axle shaft": ["old-axle"], "valve steel": [],
    "dowel pin": ["dowel-pin"], "hard chrome bar": ["chromed-bar"],
    "threaded rod b7": ["b7-studding"], "allen wrench": ["hex-key"], "ball bearing": [],
    "gudgeon pin": ["gudgeon"], "garage spring": [], "circular saw blade": ["old-saw-blade"],
    "4140PH": ["42crmo4"], "4140 HT": ["42crmo4"], "EN19T": ["709m40"], "C45 bright": ["c45"],
    "C45+N": ["c45"], "ck 45": ["c45"], "aisi o1": ["100mncrw4"], "10B38": [],
    "1045 TGP": ["c45"], "12L14 CD": ["11smnpb30"],
}  # fmt: skip


def test_what_people_type_means_these_steels_and_no_other():
    found = {name: sorted(steel.slug for steel in KNOWN.find(name)) for name in MEANT}
    assert found == {name: sorted(slugs) for name, slugs in MEANT.items()}


@pytest.mark.parametrize(
    ("name", "mark", "slug"),
    [
        ("EN24T", "T", "817m40"),
        ("EN24V", "V", "817m40"),
        ("en 24 condition U", "U", "817m40"),
        ("EN24X", "X", "817m40"),
        ("817M40Z", "Z", "817m40"),
        ("BS 970 EN16T", "T", "605m36"),
        ("708M40T", "T", "42crmo4"),
        ("EN19 T", "T", "709m40"),
        ("EN8R", "R", "080m40"),
        ("EN36a P", "P", "655m13"),
        ("4140PH", "PH", "42crmo4"),
        ("AISI 4140 HT", "PH", "42crmo4"),
        ("4140 prehard", "PH", "42crmo4"),
        ("4140 annealed", "A", "42crmo4"),
        ("42CrMo4+QT", "QT", "42crmo4"),
        ("42CrMo4 +QT", "QT", "42crmo4"),
        ("42CrMo4V", "QT", "42crmo4"),
        ("1.7225+QT", "QT", "42crmo4"),
        ("C45+C", "C", "c45"),
        ("C45E +N", "N", "c45"),
        ("S235JR+AR", "AR", "s235"),
        ("1018 CD", "C", "070m20"),
        ("1045 hot rolled", "AR", "c45"),
        ("16MnCr5+A", "A", "16mncr5"),
        ("17-4PH H1025", "H1025", "x5crnicunb16-4"),
        ("1.4542+AT", "AT", "x5crnicunb16-4"),
    ],
)
def test_a_name_carries_its_condition(name, mark, slug):
    found = KNOWN.look_up(name)
    assert [steel.slug for steel in found.steels] == [slug]
    assert found.mark == mark
    assert mark in KNOWN.marks


@pytest.mark.parametrize("name", ["17-4PH", "EN1A", "EN32C", "EN24", "51CrV4", "silver steel"])
def test_the_end_of_a_name_is_no_condition_where_the_whole_is_a_name(name):
    assert KNOWN.look_up(name).mark is None


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("sliver steel", "silver steel"),
        ("gague plate", "gauge plate"),
        ("42CrM4", "42CrMo4"),
        ("42CrMo44", "42CrMo4"),
        ("4104", "4140"),
        ("silver stel", "silver steel"),
        ("high speed stele", "high-speed steel"),
        ("dowel pins", "dowel pin"),
        ("S355MC", "S355J2"),
        ("S23", "S235"),
        ("413", "4130"),
    ],
)
def test_a_slip_of_a_letter_or_two_is_asked_back(written, meant):
    found = KNOWN.look_up(written)
    assert found.steels == ()
    assert plain(meant) in {plain(name) for name in found.near}
    assert f"Did you mean {found.near[0]}" in found.did_you_mean


@pytest.mark.parametrize("written", ["adamantium", "X9", "C9"])
def test_what_is_near_nothing_has_no_suggestion(written):
    """Of so few letters, two others make another name."""
    found = KNOWN.look_up(written)
    assert found.near == ()
    assert found.did_you_mean == "`temperwright steels` lists them."


def test_a_name_with_a_window_of_its_own_brings_its_composition():
    (american,), (european,) = KNOWN.find("AISI 4140"), KNOWN.find("42CrMo4")
    assert american.slug == european.slug
    assert american.composition_wt_pct["Mn"].middle > european.composition_wt_pct["Mn"].middle
    assert american.composition_wt_pct["P"] is european.composition_wt_pct["P"]
    assert american.assumed is not None
    assert european.assumed is None


def test_a_catalogue_assumes_the_composition_of_the_name_it_is_asked_by():
    assert KNOWN.assuming("1.7225") is KNOWN
    assert KNOWN.assuming(None) is KNOWN
    assumed = KNOWN.assuming("4140").steels["42crmo4"]
    assert assumed.composition_wt_pct == KNOWN.find("4140")[0].composition_wt_pct


@pytest.mark.parametrize(
    ("text", "kinds"), [("silver steel", 1), ("nitriding", 1), ("", 10), ("no such", 0)]
)
def test_a_text_lists_what_it_means_by_name_family_or_kind(text, kinds):
    steels = KNOWN.listed(text)
    families = {slug: family.name for slug, family in KNOWN.families.items()}
    assert listed(text, KNOWN.steels.values(), KNOWN.carriers, families) == steels
    assert len({steel.kind for steel in steels}) >= kinds
    assert bool(steels) == bool(kinds)
