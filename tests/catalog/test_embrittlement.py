"""Which steels have a tempering range to avoid: one rule from composition, held by the entries.

ASM Handbook, Volume 4, Heat Treating, 1991, Tempering of Steel (from memory): low-alloy steels
of medium carbon turn brittle at about 230 to 370 °C (tempered-martensite embrittlement);
chromium, manganese and nickel steels without molybdenum also when cooled slowly through 575 to
375 °C. Oil-hardening tool steel and bearing steel do so at 270 to 370 °C (handbooks of tool
steel, from memory); nickel tool steel for saws is tempered there. Silicon beyond about 1.2 %
moves the first window up by 100 °C or so; how far for spring steel is not known here, so none
is entered.
"""

from catalog import load_catalog

STEELS = load_catalog().steels.values()
# Kinds that are alloyed on purpose: carbon steels have a limit of residual chromium and nickel.
ALLOYED = {"alloy", "spring", "nitriding"}


def content(steel, element):
    """Return the middle of an element's range. [wt %]"""
    return (
        steel.composition_wt_pct[element].middle if element in steel.composition_wt_pct else 0.0
    )


def is_low_alloy(steel):
    """Return whether the rule speaks of a steel: quenched, medium carbon, alloyed a little."""
    alloy = content(steel, "Cr") + content(steel, "Ni") + max(content(steel, "Mn") - 1.0, 0.0)
    return (
        "quench" in steel.hardens_by
        and steel.kind in ALLOYED
        and 0.2 <= content(steel, "C") <= 0.65
        and 0.5 <= alloy <= 5.5
    )


def test_low_alloy_steel_of_medium_carbon_has_a_window_below_400_c():
    lacking = [
        steel.slug
        for steel in STEELS
        if is_low_alloy(steel)
        and content(steel, "Si") < 1.2
        and not any(span.low <= 300 <= span.high for span in steel.embrittlement_c)
    ]
    assert lacking == []


def test_no_other_steel_has_that_window():
    wrong = [
        steel.slug
        for steel in STEELS
        if any(span.low <= 300 <= span.high for span in steel.embrittlement_c)
        and not is_low_alloy(steel)
    ]
    assert wrong == []


def test_low_alloy_steel_without_molybdenum_is_not_cooled_slowly_from_a_hot_temper():
    warned = {
        steel.slug
        for steel in STEELS
        if "temper-embrittlement-slow-cool" in [limit.caution for limit in steel.limitation]
    }
    lacking = {
        steel.slug
        for steel in STEELS
        if is_low_alloy(steel)
        and content(steel, "Mo") < 0.15
        and content(steel, "Cr") + content(steel, "Ni") + content(steel, "Mn") >= 1.5
    }
    assert {"41cr4", "51crv4", "55cr3"} <= lacking <= warned


def test_martensitic_stainless_has_a_window_about_500_c():
    for steel in STEELS:
        if steel.kind == "martensitic-stainless":
            assert any(span.low <= 500 <= span.high for span in steel.embrittlement_c), (
                steel.slug
            )
