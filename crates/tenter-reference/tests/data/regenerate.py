"""Writes molar_masses.csv: formula and molar mass of every CAS number in the data, from the `chemicals` library.

    pip install chemicals==1.5.2
    python regenerate.py

The library takes its identifiers from PubChem. It is asked by CAS number only, so it knows nothing of our formulas.
"""

import csv
import pathlib
import tomllib

from chemicals.identifiers import search_chemical

HERE = pathlib.Path(__file__).parent
DATA = HERE.parent.parent / "data"

# The library's record for these numbers is another species than the one weighed out.
OTHER_SPECIES = {
    "ammonia": "library record is ammonium hydroxide, NH4OH; ours is the NH3 dissolved",
    "alum": "library record leaves out ten waters and one sulfate of the dodecahydrate",
    "aluminium-sulfate-octadecahydrate": "library record is one aluminium, one sulfate and water",
    "tin-chloride-dihydrate": "library record is the monohydrate",
    "cream-of-tartar": "library record is tartaric acid without its potassium",
}


def entries():
    for file, key in (("materials.toml", "material"), ("dyes.toml", "dye")):
        with open(DATA / file, "rb") as handle:
            yield from tomllib.load(handle)[key]


def main():
    rows = []
    for entry in entries():
        cas = entry.get("cas", {}).get("value")
        if not cas or "molar_mass_g_per_mol" not in entry or entry["id"] in OTHER_SPECIES:
            continue
        try:
            found = search_chemical(cas)
        except ValueError:
            continue
        if found.CASs != cas:
            continue
        rows.append((entry["id"], cas, found.formula, f"{found.MW:.4f}"))
    with open(HERE / "molar_masses.csv", "w", newline="", encoding="utf-8") as handle:
        writer = csv.writer(handle, lineterminator="\n")
        writer.writerow(("id", "cas", "formula", "g_per_mol"))
        writer.writerows(rows)
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
