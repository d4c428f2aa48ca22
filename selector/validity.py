"""The published or fitted range of each model, in one table.

A model answers outside its range where physics allows, but the answer is then marked and its
error is wider. `breaches` says in words which limits an input breaks.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import ArrayLike


@dataclass(frozen=True, slots=True)
class Limit:
    """The range of one input of one model, both ends included."""

    name: str
    low: float
    high: float
    unit: str
    source: str


_TEMPERING = "24 steels of Grange and Baughman 1956, Hollomon and Jaffe 1945"
_TEMPERED_STEELS = (
    Limit("C", 0.25, 0.98, "wt %", _TEMPERING),
    Limit("Mn", 0.3, 1.85, "wt %", _TEMPERING),
    Limit("Si", 0.06, 1.62, "wt %", _TEMPERING),
    Limit("Ni", 0.0, 3.41, "wt %", _TEMPERING),
    Limit("Cr", 0.0, 1.57, "wt %", _TEMPERING),
    Limit("Mo", 0.0, 0.36, "wt %", _TEMPERING),
    Limit("V", 0.0, 0.16, "wt %", _TEMPERING),
)

_A255_STEELS = (
    Limit("C", 0.10, 0.70, "wt %", "ASTM A255-10"),
    Limit("Mn", 0.0, 1.65, "wt %", "ASTM A255-10"),
    Limit("Si", 0.0, 0.60, "wt %", "ASTM A255-10"),
    Limit("Ni", 0.0, 1.5, "wt %", "ASTM A255-10"),
    Limit("Cr", 0.0, 1.35, "wt %", "ASTM A255-10"),
    Limit("Mo", 0.0, 0.55, "wt %", "ASTM A255-10"),
    Limit("Cu", 0.0, 0.35, "wt %", "ASTM A255-10"),
    Limit("V", 0.0, 0.20, "wt %", "ASTM A255-10"),
)
_BANDED_STEELS = (
    Limit("C", 0.10, 0.65, "wt %", "32 hardenability bands"),
    Limit("Mn", 0.0, 1.7, "wt %", "32 hardenability bands"),
    Limit("Si", 0.0, 2.0, "wt %", "32 hardenability bands"),
    Limit("Ni", 0.0, 4.0, "wt %", "32 hardenability bands"),
    Limit("Cr", 0.0, 2.0, "wt %", "32 hardenability bands"),
    Limit("Mo", 0.0, 0.6, "wt %", "32 hardenability bands"),
)
_CRITICAL_STEELS = (
    Limit("C", 0.10, 1.2, "wt %", "25 published Ac1 and Ac3"),
    Limit("Mn", 0.0, 1.8, "wt %", "25 published Ac1 and Ac3"),
    Limit("Si", 0.0, 2.0, "wt %", "25 published Ac1 and Ac3"),
    Limit("Ni", 0.0, 2.0, "wt %", "25 published Ac1 and Ac3"),
    Limit("Cr", 0.0, 2.0, "wt %", "25 published Ac1 and Ac3"),
)

# Keys are "<module>.<function>". One entry per public physics function; an empty tuple says
# that the function is an identity or holds everywhere.
LIMITS: Mapping[str, tuple[Limit, ...]] = MappingProxyType(
    {
        "austenite.austenite": (
            Limit("peak_c", 700.0, 1050.0, "°C", "estimated"),
            Limit("heating_rate_c_per_s", 0.01, 50.0, "°C/s", "estimated"),
        ),
        "band_curve.coefficients": (),
        "band_curve.heat_coefficients": (),
        "bar_equivalent.cooling_time_700_500_s": (
            Limit("jominy_mm", 1.5, 25.4, "mm", "SAE J406 end-quench chart"),
        ),
        "bar_equivalent.ideal_diameter_mm": (),
        "bar_equivalent.jominy_distance_mm": (
            Limit("diameter_mm", 5.1, 170.2, "mm", "SAE J1268 bar charts"),
            Limit("severity", 0.02, 5.0, "-", "Grossmann severities of the handbook table"),
        ),
        "boiling.bath_temperature_c": (),
        "boiling.boiling_curve": (),
        "cold.pearlitic_transition_c": (
            Limit("carbon_wt_pct", 0.05, 0.25, "wt %", "Pickering 1978"),
        ),
        "colour.heat_colour": (
            Limit("temperature_c", 475.0, 1315.0, "°C", "printed colour tables"),
        ),
        "colour.heat_colour_named": (),
        "colour.temper_colour": (
            Limit("temperature_c", 176.0, 371.0, "°C", "printed temper colour tables"),
            Limit("hold_s", 60.0, 3600.0, "s", "8 min and 1 h columns"),
        ),
        "colour.temper_colour_named": (
            Limit("hold_s", 60.0, 3600.0, "s", "8 min and 1 h columns"),
        ),
        "conduction.conduct": (),
        "contact.allowable_contact_mpa": (
            Limit("hardness_hv", 200.0, 800.0, "HV", "ISO 6336-5"),
        ),
        "contact.corner_bearing_mpa": (),
        "contact.hertz_line": (),
        "contact.hertz_point": (),
        "contact.line_shear_mpa": (),
        "contact.rolling_contact_limit_mpa": (
            Limit("hardness_hv", 200.0, 800.0, "HV", "ISO 6336-5"),
        ),
        "contact.static_contact_limit_mpa": (
            Limit("hardness_hv", 350.0, 940.0, "HV", "bearing catalogues"),
        ),
        "cracking.crack_equivalent_wt_pct": (),
        "cracking.crack_risk": (),
        "decarburisation.bar_allowance_mm": (
            Limit("thickness_mm", 1.0, 127.0, "mm", "Diehl Steel, machining allowances"),
        ),
        "decarburisation.soft_skin": (
            Limit(
                "peak_c", 700.0, 1250.0, "°C", "carbon diffusion in austenite; Paidassi 1958"
            ),
        ),
        "distortion.bow": (),
        "distortion.size_change": (),
        "drawing.from_behind": (),
        "drawing.run_back": (),
        "drawing.soaked": (),
        "end_quench.end_quench_rate_c_per_s": (
            Limit("distance_mm", 1.5, 80.0, "mm", "length of the end-quench bar"),
        ),
        "end_quench.end_quench_time_s": (
            Limit("distance_mm", 1.5, 80.0, "mm", "length of the end-quench bar"),
        ),
        "end_quench.equivalent_distance_mm": (
            Limit("time_700_500_s", 0.7, 134.0, "s", "1.5 to 80 mm of the end-quench bar"),
        ),
        "end_quench.rate_at": (),
        "end_quench.simulate": (),
        "end_quench.standard_bar": (),
        "end_quench.time_between": (),
        "exchange.convection": (),
        "exchange.held_end": (),
        "exchange.mixed": (),
        "exchange.steady": (),
        "grid.bar_grid": (),
        "grid.round_grid": (),
        "grid.widening_edges": (),
        "hardenability.corrected_factors": _A255_STEELS,
        "hardenability.critical_cooling_time": (
            Limit("C", 0.7, 1.0, "wt %", "section limits of silver steel, W1 and O1"),
        ),
        "hardenability.heat_curve": _BANDED_STEELS,
        "hardenability.ideal_diameter": _A255_STEELS,
        "hardenability.jominy_curve": _BANDED_STEELS,
        "hardenability.martensite_fraction_at": _BANDED_STEELS,
        "hardenability.multiplying_factors": _A255_STEELS,
        "hardness_scale.hb_from_hv": (Limit("hv", 80.0, 650.0, "HV", "ISO 18265 Table A.1"),),
        "hardness_scale.hrc_from_hb": (Limit("hb", 226.0, 739.0, "HB", "ASTM E140 Table 1"),),
        "hardness_scale.hrc_from_hv": (Limit("hv", 238.0, 940.0, "HV", "ASTM E140 Table 1"),),
        "hardness_scale.hv_from_hb": (Limit("hb", 76.0, 618.0, "HB", "ISO 18265 Table A.1"),),
        "hardness_scale.hv_from_hrc": (Limit("hrc", 20.0, 68.0, "HRC", "ASTM E140 Table 1"),),
        "hardness_scale.hv_from_tensile_mpa": (
            Limit("tensile_mpa", 255.0, 2180.0, "MPa", "ISO 18265 Table A.1"),
        ),
        "hardness_scale.tensile_mpa_from_hv": (
            Limit("hv", 80.0, 650.0, "HV", "ISO 18265 Table A.1"),
        ),
        "immersion.quench_boundary": (),
        "immersion.quench_history": (),
        "kernel.advance": (),
        "kernel.is_compiled": (),
        "layout.lay_out": (),
        "martensite.as_quenched": (
            Limit("C", 0.1, 1.2, "wt %", "Hodge and Orehoski 1946; from memory"),
        ),
        "martensite.fraction": (),
        "martensite.fraction_from_hardness": (
            Limit("carbon_wt_pct", 0.1, 0.69, "wt %", "Hodge and Orehoski 1946; ASTM A255"),
        ),
        "martensite.hardness": (
            Limit("carbon_wt_pct", 0.1, 0.69, "wt %", "Hodge and Orehoski 1946; ASTM A255"),
        ),
        "martensite.retained_austenite": (),
        "net_section.across_mm": (),
        "net_section.hole_share": (),
        "net_section.keyway_share": (),
        "net_section.slot_share": (),
        "notch.cross_hole_factor": (),
        "notch.fillet_factor": (),
        "notch.keyway_factor": (),
        "one_sided.bath_side_k": (),
        "one_sided.bow_mm": (),
        "operator.heat_end": (),
        "operator.reading": (),
        "operator.seen_cell": (),
        "operator.side_difference_k": (),
        "quench.bath_end_c": (
            Limit(
                "part_temperature_c",
                700.0,
                1050.0,
                "°C",
                "mean heat capacity of steel from hardening heat",
            ),
        ),
        "quench.grossmann_h": (
            Limit(
                "bath_temperature_c",
                5.0,
                55.0,
                "°C",
                "Handbook of Quenchants 1993, water at 32 and 55 °C",
            ),
        ),
        "ruling_section.round_equivalent_mm": (),
        "section.bending_stress_mpa": (),
        "section.section_modulus": (),
        "section.torsion_stress_mpa": (),
        "section_slice.plate_grid": (),
        "section_slice.section_effect": (),
        "section_slice.slice_grid": (),
        "steel_property.austenite_heat_capacity": (
            Limit("temperature_c", 25.0, 1527.0, "°C", "Dinsdale 1991, above 298 K"),
        ),
        "steel_property.cooling_steel": (),
        "steel_property.en_conductivity": (
            Limit("temperature_c", 20.0, 1200.0, "°C", "EN 1993-1-2"),
        ),
        "steel_property.en_heat_capacity": (
            Limit("temperature_c", 20.0, 1200.0, "°C", "EN 1993-1-2"),
        ),
        "steel_property.heating_steel": (),
        "strength.combined_factor": (),
        "strength.fatigue_factor": (
            Limit(
                "hardness_hv",
                100.0,
                750.0,
                "HV",
                "Murakami 2002, linear to 400 HV; bar fatigue database above",
            ),
        ),
        "strength.fatigue_limit": (
            Limit(
                "hardness_hv",
                100.0,
                750.0,
                "HV",
                "Murakami 2002, linear to 400 HV; bar fatigue database above",
            ),
        ),
        "strength.impact_force_n": (),
        "strength.static_factor": (
            Limit(
                "hardness_hv",
                130.0,
                650.0,
                "HV",
                "Pavlina and Van Tyne 2008; ISO 18265 Table A.1",
            ),
        ),
        "strength.strength": (
            Limit(
                "hardness_hv",
                130.0,
                650.0,
                "HV",
                "Pavlina and Van Tyne 2008; ISO 18265 Table A.1",
            ),
        ),
        "strength.surface_factor": (
            Limit("tensile_mpa", 400.0, 1700.0, "MPa", "surface data of 1946"),
        ),
        "sweep.compiled": (),
        "sweep.factor": (),
        "sweep.solve": (),
        "temper_curve.after": (),
        "temper_curve.along": (),
        "temper_curve.coefficients": (),
        "temper_curve.parameter_k": (),
        "temper_curve.place_of": (),
        "tempering.equivalent_time": (),
        "tempering.prior_temper": _TEMPERED_STEELS,
        "tempering.temperature_for": (
            *_TEMPERED_STEELS,
            Limit("time_s", 10.0, 115200.0, "s", _TEMPERING),
        ),
        "tempering.tempered_from_curve": (),
        "tempering.tempered_hardness": (
            *_TEMPERED_STEELS,
            Limit("temperature_c", 100.0, 704.4, "°C", _TEMPERING),
            Limit("time_s", 10.0, 115200.0, "s", _TEMPERING),
        ),
        "torch.ceiling_c": (),
        "torch.flame_boundary": (),
        "torch.swept_share": (),
        "torch.torch": (),
        "torch.wrap_fraction": (),
        "toughness.impact_class": (),
        "toughness.snap_likelihood": (
            Limit("hardness_hrc", 30.0, 67.0, "HRC", "working hardness of tools, estimated"),
        ),
        "transformation.ac1_and_ac3": _CRITICAL_STEELS,
        "transformation.carbon_solubility": (
            Limit("temperature_c", 730.0, 1000.0, "°C", "Fei and Brosh 2014"),
        ),
        "transformation.critical_temperatures": _CRITICAL_STEELS,
        "transformation.eutectoid_carbon": _CRITICAL_STEELS,
        "transformation.hardening_window": _CRITICAL_STEELS,
        "transformation.martensite_start": (
            Limit("C", 0.16, 0.92, "wt %", "17 published Ms"),
            Limit("Mn", 0.3, 1.75, "wt %", "17 published Ms"),
            Limit("Ni", 0.0, 1.85, "wt %", "17 published Ms"),
            Limit("Cr", 0.0, 5.2, "wt %", "17 published Ms"),
        ),
        "transformation.rapid_heating_shift": (
            Limit("heating_rate_c_per_s", 0.0, 300.0, "°C/s", "Feuerstein and Smith 1954"),
        ),
        "wear.carbide_life": (),
        "wear.carbon_life": (
            Limit("C", 0.2, 2.0, "wt %", "Larsen-Badse 1966, estimated above"),
        ),
        "wear.card_cut_mm": (
            Limit("hardness_hrc", 55.0, 66.0, "HRC", "Thomas 2018, estimated"),
            Limit("edge_deg", 20.0, 50.0, "°", "Thomas 2018, estimated"),
        ),
        "wear.relative_life": (
            Limit("hardness_hv", 100.0, 900.0, "HV", "Archard 1953; Khruschov 1974"),
        ),
    }
)


def breaches(model: str, values: Mapping[str, ArrayLike]) -> tuple[str, ...]:
    """Return one sentence for each limit of `model` that `values` break.

    Parameters
    ----------
    model : str
        Key of `LIMITS`, "<module>.<function>".
    values : mapping of str to array_like
        Inputs by the names used in the limits; those without a limit are passed over.

    Returns
    -------
    tuple of str
        Empty when every value is inside.
    """
    sentences = []
    for limit in LIMITS[model]:
        if limit.name not in values:
            continue
        given = np.asarray(values[limit.name], dtype=float)
        low, high = float(np.nanmin(given)), float(np.nanmax(given))
        if low < limit.low or high > limit.high:
            worst = low if low < limit.low else high
            sentences.append(
                f"{limit.name} {worst:g} {limit.unit} is outside {limit.low:g} to "
                f"{limit.high:g} {limit.unit} ({limit.source})"
            )
    return tuple(sentences)
