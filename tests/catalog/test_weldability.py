"""What the files say of welding goes by one rule, so that like steels are spoken of alike."""

from catalog import load_catalog

STEELS = load_catalog().steels
# Sulphur, selenium and lead make welds crack while hot, whatever the carbon. [wt %]
FREE_CUTTING_S_WT_PCT = 0.1
# Common practice: nobody welds more carbon in a small shop. [wt %]
MOST_CARBON_WT_PCT = 0.505
# Preheat from this carbon equivalent of the International Institute of Welding. [wt %]
PREHEAT_FROM_WT_PCT = 0.45
WELDED_AS_IT_IS = {"austenitic-stainless", "precipitation-hardening", "maraging"}


def content(steel, element):
    span = steel.composition_wt_pct.get(element)
    if span is None:
        return 0.0
    return span.middle if span.min is not None else 0.5 * span.high


def carbon_equivalent(steel):
    c, mn, cr, mo, v, ni, cu = (
        content(steel, element) for element in ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu")
    )
    return c + mn / 6 + (cr + mo + v) / 5 + (ni + cu) / 15


def by_rule(steel):
    most_sulphur = steel.composition_wt_pct.get("S")
    free = most_sulphur is not None and most_sulphur.high > FREE_CUTTING_S_WT_PCT
    if free or content(steel, "C") > MOST_CARBON_WT_PCT:
        return "no"
    if steel.kind in WELDED_AS_IT_IS or carbon_equivalent(steel) <= PREHEAT_FROM_WT_PCT:
        return None
    return "care"


def test_welding_is_spoken_of_by_the_rule():
    made = [steel for steel in STEELS.values() if steel.composition_wt_pct]
    said = {
        steel.slug: [limit.verdict for limit in steel.limitation if limit.process == "weld"]
        for steel in made
    }
    meant = {steel.slug: [rule] if (rule := by_rule(steel)) else [] for steel in made}
    assert said == meant
    assert {*map(tuple, meant.values())} == {(), ("care",), ("no",)}
