"""Draws random solutions that no coefficient was looked at with, and works out their pH with PHREEQC.

Run in a virtual environment:

    pip install pyEQL==1.7.0 numpy
    python tests/oracle/kept_back.py > drawn.csv
    cargo run -p tenter-chemistry --example compare < drawn.csv

``--seed N`` and ``--each N`` draw others and more; ``--stock`` adds a column with the answer of the
unchanged ``pitzer.dat`` where it knows every species. The committed table
``crates/tenter-chemistry/tests/data/oracle_kept_back.csv`` is the default draw.

Ranges: soda ash, bicarbonate, lye and mixtures 0.001 to 2 mol/kg (bicarbonate to 1), sodium chloride
and sulfate to 2 mol/kg, 5 to 90 °C; potash, potassium bicarbonate, potassium lye and potassium salts beside soda ash likewise; phosphate to 0.3 mol/kg; soda ash with up to 1.9 mol of acetic or
0.63 mol of citric acid to a mole; acetic acid to 2 mol/kg. Citrate is worked out by ``phreeqc.dat`` with the citrate species of ``minteq.v4.dat`` and, with
soda ash, shifted by what Pitzer's model and ``phreeqc.dat`` differ by for the same soda ash with as many equivalents of acetic
acid, for which both know coefficients. Urea is left out: no data base has it as
more than a neutral solute.
"""

import argparse
import csv
import math
import random
import sys

from regenerate import COLUMNS, ELEMENTS, Engine, analytic, citrate_extension, pitzer_extension

ACETATE = f"""
SOLUTION_MASTER_SPECIES
  Acetate Acetate- 0 59.04 59.04
SOLUTION_SPECIES
  Acetate- = Acetate-
  Acetate- + H+ = H(Acetate)
    -analytic {analytic(4.756, -0.41, -142.0)}
END
"""


def between(draw, low, high):
    """Evenly on a logarithmic scale."""
    return math.exp(draw.uniform(math.log(low), math.log(high)))


def salts(draw, totals):
    """Sodium chloride, sulfate or both."""
    kind = draw.choice(("m_Cl", "m_SO4", "both"))
    for key, sodium in (("m_Cl", 1), ("m_SO4", 2)):
        if kind in (key, "both"):
            m = between(draw, 0.01, 2.0 if key == "m_Cl" else 1.0)
            totals[key] = m
            totals["m_Na"] = totals.get("m_Na", 0.0) + sodium * m


def soda(draw):
    m = between(draw, 0.001, 2.0)
    return {"m_Na": 2 * m, "m_C": m}


def bicarbonate(draw):
    m = between(draw, 0.001, 1.0)
    return {"m_Na": m, "m_C": m}


def carbonates(draw):
    a, b = between(draw, 0.001, 1.5), between(draw, 0.001, 0.7)
    return {"m_Na": 2 * a + b, "m_C": a + b}


def lye(draw):
    return {"m_Na": between(draw, 0.001, 2.0)}


def lye_and_soda(draw):
    a, b = between(draw, 0.001, 1.0), between(draw, 0.001, 1.0)
    return {"m_Na": a + 2 * b, "m_C": b}


def with_salts(base):
    def draw_it(draw):
        totals = base(draw)
        salts(draw, totals)
        return totals
    return draw_it


def phosphate(draw):
    p = between(draw, 0.003, 0.3)
    return {"m_Na": draw.uniform(0.3, 3.0) * p, "m_P": p}


def soda_acid(key, most):
    def draw_it(draw):
        m = between(draw, 0.01, 0.8)
        return {"m_Na": 2 * m, "m_C": m, key: draw.uniform(0.05, most) * m}
    return draw_it


def acetic(draw):
    return {"m_Ac": between(draw, 0.001, 2.0)}


def vinegar_and_salt(draw):
    totals = {"m_Ac": between(draw, 0.05, 1.0)}
    totals["m_Na"] = totals["m_Cl"] = between(draw, 0.01, 1.0)
    return totals


def potash(draw):
    m = between(draw, 0.001, 2.0)
    return {"m_K": 2 * m, "m_C": m}


def potassium_carbonates(draw):
    a, b = between(draw, 0.001, 1.0), between(draw, 0.001, 0.7)
    return {"m_K": 2 * a + b, "m_C": a + b}


def potassium_lye(draw):
    a, b = between(draw, 0.001, 1.0), between(draw, 0.001, 1.0)
    return {"m_K": a + 2 * b, "m_C": b}


def soda_and_potassium_salt(draw):
    totals = soda(draw)
    if draw.random() < 0.5:
        totals["m_K"] = totals["m_Cl"] = between(draw, 0.01, 2.0)
    else:
        # No more than dissolves.
        totals["m_SO4"] = between(draw, 0.01, 0.5)
        totals["m_K"] = 2 * totals["m_SO4"]
    return totals


SERIES = [
    ("K1_soda_ash", soda),
    ("K2_bicarbonate", bicarbonate),
    ("K3_carbonate_bicarbonate", carbonates),
    ("K4_lye", lye),
    ("K4_lye_and_soda", lye_and_soda),
    ("K9_soda_and_salts", with_salts(soda)),
    ("K9_carbonates_and_salts", with_salts(carbonates)),
    ("K9_lye_soda_and_salts", with_salts(lye_and_soda)),
    ("K5_phosphate", phosphate),
    ("K6_acetic_acid", acetic),
    ("K6_acetic_acid_and_salt", vinegar_and_salt),
    ("K8_soda_and_acetic", soda_acid("m_Ac", 1.9)),
    ("K7_soda_and_citric", soda_acid("m_Cit", 0.63)),
    ("K1_potash", potash),
    ("K3_potassium_carbonates", potassium_carbonates),
    ("K4_potassium_lye_and_potash", potassium_lye),
    ("K9_soda_and_potassium_salts", soda_and_potassium_salt),
]
# Potassium with carbonate and bicarbonate is that of the unchanged ``pitzer.dat``, which follows temperature; data0.ypf.R2 has
# it at 25 °C only.
MORE = ["m_K"]


def main():
    words = argparse.ArgumentParser()
    words.add_argument("--seed", type=int, default=20261125)
    words.add_argument("--each", type=int, default=25)
    words.add_argument("--stock", action="store_true")
    asked = words.parse_args()
    draw = random.Random(asked.seed)
    pitzer = Engine("pitzer.dat", pitzer_extension())
    citrate = Engine("phreeqc.dat", citrate_extension())
    acetate = Engine("phreeqc.dat", ACETATE)
    stock = Engine("pitzer.dat", "END")
    out = csv.writer(sys.stdout, lineterminator="\n")
    columns = COLUMNS + MORE
    head = ["id", "series", "T_C", *columns, "ref_model", "pH_ref", "m_OH"]
    out.writerow(head + (["pH_stock_pitzer"] if asked.stock else []))
    number = 0
    for name, series in SERIES:
        for _ in range(asked.each):
            number += 1
            celsius = round(draw.uniform(5.0, 90.0), 1)
            totals = {key: float(f"{value:.5g}") for key, value in series(draw).items()}
            with_citrate = "m_Cit" in totals
            engine = citrate if with_citrate else pitzer
            model = ("phreeqc.dat+citrate shifted, PHREEQC 3.8.6" if with_citrate
                     else "Pitzer(data0.ypf.R2), PHREEQC 3.8.6")
            named = {ELEMENTS[key]: value for key, value in totals.items()}
            row = engine.ph(celsius, named)
            ph = row["pH"]
            if with_citrate:
                twin = {"Na": totals["m_Na"], "C(4)": totals["m_C"], "Acetate": 3.0 * totals["m_Cit"]}
                ph += pitzer.ph(celsius, twin)["pH"] - acetate.ph(celsius, twin)["pH"]
            cells = [f"K{number:03d}", name, celsius, *[f"{totals.get(c, 0.0):.7g}" for c in columns], model,
                     f"{ph:.4f}", f"{row['m_OH-(mol/kgw)']:.6g}"]
            if asked.stock:
                known = not any(key in totals for key in ("m_Ac", "m_Cit", "m_P"))
                cells.append(f"{stock.ph(celsius, named)['pH']:.4f}" if known else "")
            out.writerow(cells)


if __name__ == "__main__":
    main()
