"""Sulfite, citrate and silicate, for which the model's coefficients are from memory or taken by likeness, by a data base of
another kind that has published ones.

Run as ``regenerate.py``. Writes ``crates/tenter-chemistry/tests/data/oracle_specific_ion.csv``: pH by ``sit.dat`` of PHREEQC
3.8.6 (ThermoChimie version 12a, specific ion interaction theory; Na-citrate and Na-sulfite coefficients there), at 25 °C, where
those coefficients hold.
"""

import csv
from pathlib import Path

from regenerate import COLUMNS, Engine

TABLE = Path(__file__).parents[2] / "crates/tenter-chemistry/tests/data/oracle_specific_ion.csv"
NAMES = {"m_Na": "Na", "m_S4": "S(4)", "m_Cit": "Cit", "m_Si": "Si"}
SERIES = []
for m in (0.003, 0.01, 0.03, 0.1, 0.3):
    SERIES.append(("T1_sulfite", {"m_Na": 2 * m, "m_S4": m}))
    # Not bisulfite by itself: its pH hangs on the disulfite that sit.dat lets it form, which the model leaves out.
    SERIES.append(("T1_sulfite_buffer", {"m_Na": 1.5 * m, "m_S4": m}))
    SERIES.append(("T2_citrate", {"m_Na": 3 * m, "m_Cit": m}))
    for n in (1.0, 1.5, 2.0, 2.5):
        SERIES.append(("T2_citrate_buffer", {"m_Na": n * m, "m_Cit": m}))
for m in (0.003, 0.01, 0.03):
    SERIES.append(("T3_metasilicate", {"m_Na": 2 * m, "m_Si": m}))


def main():
    engine = Engine("sit.dat", "END")
    columns = COLUMNS + ["m_S4", "m_Si"]
    with open(TABLE, "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["id", "series", "T_C", *columns, "ref_model", "pH_ref"])
        for number, (series, totals) in enumerate(SERIES, 1):
            row = engine.ph(25.0, {NAMES[key]: value for key, value in totals.items()})
            out.writerow([f"T{number:03d}", series, 25, *[f"{totals.get(c, 0.0):.7g}" for c in columns],
                          "sit.dat (ThermoChimie 12a), PHREEQC 3.8.6", f"{row['pH']:.4f}"])


if __name__ == "__main__":
    main()
