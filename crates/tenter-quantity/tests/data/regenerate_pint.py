"""Regenerates pint.csv: factors to SI as the pint library (an independent unit library) has them.

    python -m venv venv && venv/bin/pip install pint==0.25.3
    venv/bin/python regenerate_pint.py > pint.csv

Never run by the build: the csv beside this script is committed.
"""
import pint

registry = pint.UnitRegistry()
UNITS = {
    "g": "gram", "kg": "kilogram", "mg": "milligram", "ug": "microgram", "tonne": "metric_ton",
    "oz": "ounce", "lb": "pound", "grain": "grain", "mol": "mole", "mmol": "millimole", "M": "molar", "mM": "millimolar",
    "mL": "milliliter", "L": "liter", "cL": "centiliter", "dL": "deciliter", "uL": "microliter", "m³": "meter**3",
    "US tsp": "teaspoon", "US tbsp": "tablespoon", "US fl oz": "US_fluid_ounce", "US cup": "cup", "US pint": "US_pint",
    "US qt": "quart", "US gal": "US_liquid_gallon",
    "imperial fl oz": "imperial_fluid_ounce", "imperial cup": "imperial_cup", "imperial pint": "imperial_pint",
    "imperial qt": "imperial_quart", "imperial gal": "imperial_gallon",
    "s": "second", "min": "minute", "h": "hour", "day": "day", "week": "week", "K": "kelvin",
    "m": "meter", "cm": "centimeter", "mm": "millimeter", "inch": "inch", "ft": "foot", "yd": "yard",
    "m²": "meter**2", "cm²": "centimeter**2", "sq inch": "inch**2", "sq ft": "foot**2", "sq yd": "yard**2",
    "g/m²": "gram/meter**2", "%": "percent", "ppm": "ppm",
    "g/L": "gram/liter", "mg/L": "milligram/liter", "kg/L": "kilogram/liter", "g/mL": "gram/milliliter",
    "oz/US gal": "ounce/US_liquid_gallon", "lb/US gal": "pound/US_liquid_gallon", "oz/sq yd": "ounce/yard**2",
    "mL/L": "milliliter/liter", "g/kg": "gram/kilogram", "L/kg": "liter/kilogram", "mL/g": "milliliter/gram",
    "mol/L": "mole/liter", "mmol/L": "millimole/liter", "gr/gal": "grain/US_liquid_gallon",
    "°e": "grain/imperial_gallon", "°C/min": "delta_degC/minute", "°F/min": "delta_degF/minute",
    "°C/h": "delta_degC/hour",
}
print("symbol,pint,factor,offset")
for symbol, expression in UNITS.items():
    factor = registry.Quantity(1, expression).to_base_units()
    # pint's base units are SI, gram among them as kilogram.
    print(f"{symbol},{expression},{factor.magnitude!r},0")
for symbol, scale in (("°C", "degC"), ("°F", "degF")):
    at = [registry.Quantity(x, scale).to("kelvin").magnitude for x in (0.0, 100.0)]
    print(f"{symbol},{scale},{(at[1] - at[0]) / 100!r},{at[0]!r}")
