"""The bench figures of the trade that no simulation rests on, each with where it comes from.

Figures that an option was judged by are not here: they are read from it.
"""

from types import MappingProxyType

COMMON = "common practice, no source"
SHEETS = "tool steel producers' sheets (from memory)"
ASM = "ASM Handbook vol. 4, heat treating (from memory)"

# Preheats by kind of steel, before its hardening heat. [°C]
PREHEAT_C = MappingProxyType(
    {
        "high-speed": (550.0, 850.0),
        "hot-work-tool": (650.0, 850.0),
        "air-tool": (650.0,),
        "shock-tool": (650.0,),
        "martensitic-stainless": (650.0, 850.0),
        "oil-tool": (650.0,),
    }
)
# Held at each until even; thinner oil-hardening steel goes straight to its heat. SHEETS. [min]
PREHEAT_MIN, PREHEAT_FROM_MM = 15.0, 12.0
# Stress relief of machined steel, prehard bar below its own temper: ASM. [°C], [min]
RELIEF_C, RELIEF_MIN = 620.0, 60.0
RELIEF_PREHARD_C = 540.0
# Run-out this fine, or a part so many times longer than thick, is relieved first. COMMON.
RELIEF_RUNOUT_MM, RELIEF_SLENDER = 0.05, 10.0
# Softening what is hard already, below the transformation: ASM. [°C], [min]
SOFTEN_C, SOFTEN_MIN = 700.0, 60.0
# Normalising where a steel names no heat of its own: ASM. [°C]
NORMALISE_C = 870.0
# Inside corners, as large as the part allows; edges broken; a cutting edge left blunt until it
# is hard. COMMON. [mm]
CORNER_MM, BROKEN_MM, BLUNT_MM = 1.0, 0.3, 0.5
# Soft skin and scale off a wearing face after a flame, least. COMMON: 0.1 to 0.25. [mm]
LEAST_STOCK_MM = 0.1
# A cold step lasts an hour for 25 mm of section (F. Diekman, Cold and cryogenic treatment of
# steel, ASM Handbook reprint), at least half an hour: COMMON. [min/mm], [min]
COLD_MIN_PER_MM, COLD_LEAST_MIN = 2.4, 30.0
# Annealing in the furnace: [min] at heat for each mm of section, at least an hour; cooled so
# quickly at most to 600 °C. ASM. [min/mm], [min], [°C/h]
ANNEAL_MIN_PER_MM, ANNEAL_LEAST_MIN, ANNEAL_COOL_C_PER_H = 2.0, 60.0, 20.0
# Grease and salts come off in water this hot. COMMON. [°C]
WASH_C = 60.0
# One cut or pass of the stone on hard steel, so that it stays cool. COMMON. [mm]
LIGHT_CUT_MM = 0.02
# Zinc, nickel or chrome on bought parts is up to so thick. COMMON. [mm]
PLATING_MM = 0.025
# A bath takes out what it can in so many minutes a millimetre, and at least the second. COMMON.
BATH_MIN = MappingProxyType(
    {"water": (0.05, 0.5), "oil": (0.1, 1.0), "air": (1.5, 5.0), "plates": (0.5, 3.0)}
)
# Equalising in hot salt: ASM, martempering 1 to 10 min. [min/mm], least, most [min]
SALT_MIN_PER_MM, SALT_LEAST_MIN, SALT_MOST_MIN = 0.2, 2.0, 10.0
# Into the temper from here, never colder for rich steel. SHEETS. [°C]
HAND_WARM_C = (50.0, 65.0)
# A part takes so long to come to an oven's or plate's heat, before its minutes count. COMMON.
HEAT_UP_MIN_PER_MM = 1.0
# Temper colours are those of plain and low-alloy steel. COMMON. [wt %]
COLOURS_TO_CR = 3.0
# Nobody is told to be slower than this from the heat into the bath. COMMON. [s]
LATEST_S = 4.0
# Packing round a part, and the share of carbonate in charcoal. COMMON. [mm], [%]
PACKED_MM, CARBONATE_PCT = 25.0, 10.0
# A dip into compound: how long at heat, how often. Model engineering practice (from memory).
DIP_MIN, DIPS = 4.0, 3
# Nitriding grows a surface by this at most; growth of a nitrocarburised one. ASM. [mm]
NITRIDE_GROWTH_MM, NITROCARBURISE_GROWTH_MM = 0.025, 0.01
# What a splinter of dry softwood does that is rubbed on steel so hot. COMMON. [°C]
SPLINTER = ((460.0, "takes fire"), (430.0, "throws sparks"), (0.0, "smokes and glows"))


def splinter_words(at_c: float) -> str:
    """Return how a temper past the colours is read by hand."""
    does = next(words for from_c, words in SPLINTER if at_c >= from_c)
    return f"a splinter of dry wood rubbed on it {does}"
