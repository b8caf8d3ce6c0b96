"""Regenerates the reference values that the chemistry crate is tested against.

Run in a virtual environment:

    pip install pyEQL==1.7.0 colour-science==0.4.7 iapws==1.5.5 numpy
    python tests/oracle/regenerate.py

Writes, beside this file:

* ``oracle_extra.csv``  pH of solutions, PHREEQC 3.8.6 (the engine inside pyEQL 1.7.0) with the
  Pitzer coefficients of data0.ypf.R2 (``pitzer_parameters.csv``) over the stock ``pitzer.dat``;
  citrate by ``phreeqc.dat`` with the citrate species of ``minteq.v4.dat``;
* ``oracle_dilute.csv``  other bases and weak acids in dilute solution, by ``phreeqc.dat``:
  a data base of quite another kind, so an independent check;
* ``colour_extra.csv``  colour conversions and differences, colour-science 0.4.7;
* ``water_extra.csv``   water between the committed rows, iapws 1.5.5.

The crate's tests read copies in ``crates/tenter-chemistry/tests/data``. To extend the check, add a
row to CONDITIONS, run this, copy the tables there and run the tests.
"""

import csv
import itertools
import math
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
R = 8.314462618
T0 = 298.15


def analytic(pk, enthalpy_kj, heat_capacity):
    """log10 K of a dissociation as PHREEQC's A1..A6, from pK, enthalpy and heat capacity at 25 °C."""
    h, c = enthalpy_kj * 1000.0 / R, heat_capacity / R
    ln10 = math.log(10.0)
    a1 = -pk + (h / T0 - c * (1.0 + math.log(T0))) / ln10
    a3 = (-h + c * T0) / ln10
    return f"{-a1!r} 0 {-a3!r} {-c!r} 0 0"


def through(points):
    """log10 K through four (°C, log K) points as A1 + A2 T + A3/T + A4 log10 T."""
    t = np.array([p[0] + 273.15 for p in points])
    rows = np.column_stack([np.ones(4), t, 1.0 / t, np.log10(t)])
    return " ".join(repr(float(x)) for x in np.linalg.solve(rows, [p[1] for p in points]))


def grid(*values):
    return through(list(zip((0.0, 25.0, 60.0, 100.0), values)))


def pitzer_block():
    """The PITZER data block from the coefficient table."""
    phreeqc_name = {"acetate-": "Acetate-"}
    kinds = {"beta0": "-B0", "beta1": "-B1", "Cphi": "-C0", "theta": "-THETA", "psi": "-PSI",
             "lambda": "-LAMDA"}
    lines = {k: [] for k in kinds}
    with open(HERE / "pitzer_parameters.csv", newline="") as f:
        for row in csv.DictReader(f):
            names = [phreeqc_name.get(s.strip(), s.strip()) for s in row["species"].split(",")]
            a = [row[c] or "0" for c in ("a1", "a2", "a3", "a4")]
            lines[row["kind"]].append("  " + "  ".join(names + a))
    # Rows of the stock data base that the coefficients here do without.
    lines["-B2"] = ["  HCO3- Na+ 0", "  Na+ CO3-2 0"]
    kinds["-B2"] = "-B2"
    # Rai & Felmy 1995, in data0.ypf.R2.
    lines["lambda"] += ["  H3PO4 H+ 0.29", "  H3PO4 H2PO4- -0.4"]
    out = ["PITZER"]
    for kind, keyword in kinds.items():
        out += [keyword] + lines[kind]
    return "\n".join(out)


def pitzer_extension():
    return f"""
SOLUTION_MASTER_SPECIES
  Acetate Acetate- 0 59.04 59.04
  P PO4-3 2 P 30.9738
SOLUTION_SPECIES
  Acetate- = Acetate-
  Acetate- + H+ = H(Acetate)
    -analytic {analytic(4.756, -0.41, -142.0)}
  PO4-3 = PO4-3
  PO4-3 + H+ = HPO4-2
    -analytic {grid(12.6143, 12.3218, 12.1388, 12.1176)}
  PO4-3 + 2 H+ = H2PO4-
    -analytic {grid(12.6143 + 7.3231, 12.3218 + 7.2054, 12.1388 + 7.1888, 12.1176 + 7.2876)}
  PO4-3 + 3 H+ = H3PO4
    -analytic {grid(12.6143 + 9.3933, 12.3218 + 9.3751, 12.1388 + 9.5434, 12.1176 + 9.8805)}
{pitzer_block()}
END
"""


def citrate_extension():
    def cumulative(*steps):
        total = [sum(s[i] for s in steps) for i in range(3)]
        return analytic(*total)

    one, two, three = (6.396, -3.38, -254.0), (4.761, 2.23, -178.0), (3.128, 4.07, -131.0)
    return f"""
SOLUTION_MASTER_SPECIES
  Citrate Citrate-3 2 189.102 189.102
SOLUTION_SPECIES
  Citrate-3 = Citrate-3
  H+ + Citrate-3 = H(Citrate)-2
    -analytic {cumulative(one)}
  2 H+ + Citrate-3 = H2(Citrate)-
    -analytic {cumulative(one, two)}
  3 H+ + Citrate-3 = H3(Citrate)
    -analytic {cumulative(one, two, three)}
  Na+ + Citrate-3 = Na(Citrate)-2
    log_k 1.03
    delta_h -2.8033 kJ
  2 Na+ + Citrate-3 = Na2(Citrate)-
    log_k 1.5
    delta_h -5.1045 kJ
  Na+ + Citrate-3 + H+ = NaH(Citrate)-
    log_k 6.45
    delta_h -3.5982 kJ
END
"""


class Engine:
    def __init__(self, database, extension):
        from pyEQL.phreeqc import core

        directory = Path(core.__file__).parent / "database"
        self.engine = core.ext_module()
        self.engine.load_database(str(directory / database))
        self.engine.run_string(extension)
        errors = self.engine.get_error_string()
        if errors.strip():
            raise RuntimeError(errors)

    def ph(self, celsius, totals):
        lines = "\n".join(f"  {name} {value!r}" for name, value in totals.items() if value > 0.0)
        self.engine.run_string(f"""
SELECTED_OUTPUT
  -reset false
  -high_precision true
  -pH true
  -molalities OH- HCO3- CO3-2
  -ionic_strength true
  -water true
SOLUTION 1
  units mol/kgw
  temp {celsius}
  pH 7 charge
{lines}
END
""")
        errors = self.engine.get_error_string()
        if errors.strip():
            raise RuntimeError(errors)
        from pyEQL.phreeqc.var import Var

        def cell(r, c):
            box = Var()
            self.engine.get_value(r, c, box._var.var)
            return box.value

        last = self.engine.get_selected_output_row_count() - 1
        columns = range(self.engine.get_selected_output_column_count())
        row = {str(cell(0, c)): cell(last, c) for c in columns}
        return row


# series, temperatures, totals in mol/kg of water (m_ columns of the table)
SODA, BICARB = 0.105988, 0.084006
ALL = (10, 15, 35, 50, 70, 85)


def soda(grams, **more):
    m = grams / 1000.0 / SODA
    out = {"m_Na": 2 * m, "m_C": m}
    for key, value in more.items():
        out[key] = out.get(key, 0.0) + value
    return out


CONDITIONS = []
for g in (7, 33, 80, 150):
    CONDITIONS.append(("S1_soda_ash", ALL, soda(g)))
for a, b in ((3, 20), (15, 15), (60, 5)):
    mb = b / 1000.0 / BICARB
    CONDITIONS.append(("S3_carbonate_bicarbonate", ALL, soda(a, m_Na=mb, m_C=mb)))
CONDITIONS.append(("S2_bicarbonate", ALL, {"m_Na": 0.25, "m_C": 0.25}))
for m in (0.01, 0.08, 0.5, 2.0):
    CONDITIONS.append(("S4_caustic", ALL, {"m_Na": m}))
CONDITIONS.append(("S4_caustic_and_soda", ALL, soda(30, m_Na=0.05)))
for g, cl, so in ((10, 0.7, 0.0), (20, 0.0, 0.5), (33, 0.4, 0.25), (60, 1.5, 0.0), (5, 0.0, 0.9)):
    CONDITIONS.append(("S9_soda_and_salts", ALL, soda(g, m_Na=cl + 2 * so, m_Cl=cl, m_SO4=so)))
CONDITIONS.append(("S9_caustic_and_salt", ALL, {"m_Na": 1.1, "m_Cl": 1.0}))
for p, n in ((0.02, 3.0), (0.1, 3.0), (0.1, 2.0), (0.05, 1.5), (0.2, 1.0)):
    CONDITIONS.append(("S5_phosphates", ALL, {"m_Na": n * p, "m_P": p}))
CONDITIONS.append(("S5_phosphate_and_salt", ALL, {"m_Na": 0.8, "m_P": 0.1, "m_Cl": 0.5}))
for a in (0.003, 0.1, 1.0):
    CONDITIONS.append(("S6_acetic_acid", ALL, {"m_Ac": a}))
CONDITIONS.append(("S6_acetate_buffer", ALL, {"m_Na": 0.1, "m_Ac": 0.2}))
CONDITIONS.append(("S6_acetic_acid_and_salt", ALL, {"m_Na": 0.5, "m_Cl": 0.5, "m_Ac": 0.1}))
for share in (0.2, 0.7, 1.2, 1.9):
    m = 33 / 1000.0 / SODA
    CONDITIONS.append(("S8_soda_plus_acetic", ALL, soda(33, m_Ac=share * m)))
CONDITIONS.append(("S8_soda_salt_and_acetic", ALL, soda(20, m_Ac=0.1, m_Na=0.6, m_Cl=0.6)))
for c in (0.004, 0.03, 0.15):
    CONDITIONS.append(("S7_citric_acid", ALL, {"m_Cit": c}))
for c, n in ((0.02, 1.0), (0.02, 2.0), (0.02, 2.8), (0.1, 1.5), (0.1, 2.5)):
    CONDITIONS.append(("S7_citrate_buffers", ALL, {"m_Na": n * c, "m_Cit": c}))

# Other bases and weak acids in dilute solution, by a data base of quite another kind (ion pairs with
# extended Debye-Hückel): an independent check, to about 0.05.
DILUTE = []
for m in (0.003, 0.03):
    DILUTE.append(("D1_potash", ALL, {"m_K": 2 * m, "m_C": m}))
DILUTE.append(("D1_potash_and_bicarbonate", ALL, {"m_K": 0.06, "m_C": 0.04}))
for m in (0.005, 0.1):
    DILUTE.append(("D2_ammonia", ALL, {"m_N": m}))
DILUTE.append(("D2_ammonia_buffer", ALL, {"m_N": 0.1, "m_Cl": 0.05}))
DILUTE.append(("D2_soda_and_ammonium", ALL, {"m_N": 0.02, "m_Cl": 0.02, "m_Na": 0.04, "m_C": 0.02}))
for m in (0.002, 0.02):
    DILUTE.append(("D3_metasilicate", ALL, {"m_Na": 2 * m, "m_Si": m}))
DILUTE.append(("D4_hard_water", ALL, {"m_Ca": 0.002, "m_Mg": 0.001, "m_C": 0.004, "m_Na": 0.001,
                                      "m_Cl": 0.001, "m_SO4": 0.001}))
DILUTE.append(("D4_hard_water_with_soda", ALL, {"m_Ca": 0.002, "m_Mg": 0.001, "m_C": 0.014,
                                                "m_Na": 0.021, "m_Cl": 0.001, "m_SO4": 0.001}))
DILUTE.append(("D5_bisulfate", ALL, {"m_Na": 0.02, "m_SO4": 0.02}))
DILUTE.append(("D5_sulfuric_acid", ALL, {"m_SO4": 0.01}))
MORE_COLUMNS = ["m_K", "m_Ca", "m_Mg", "m_N", "m_Si"]
COLUMNS = ["m_Na", "m_C", "m_P", "m_Ac", "m_Cit", "m_Cl", "m_SO4"]
ELEMENTS = {"m_Na": "Na", "m_C": "C(4)", "m_P": "P", "m_Ac": "Acetate", "m_Cit": "Citrate",
            "m_Cl": "Cl", "m_SO4": "S(6)", "m_K": "K", "m_Ca": "Ca", "m_Mg": "Mg", "m_N": "N(-3)",
            "m_Si": "Si"}


def equilibrium():
    pitzer = Engine("pitzer.dat", pitzer_extension())
    citrate = Engine("phreeqc.dat", citrate_extension())
    with open(HERE / "oracle_extra.csv", "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["id", "series", "T_C", *COLUMNS, "ref_model", "pH_ref", "m_OH"])
        number = itertools.count(1)
        for series, temperatures, totals in CONDITIONS:
            with_citrate = totals.get("m_Cit", 0.0) > 0.0
            engine = citrate if with_citrate else pitzer
            model = ("phreeqc.dat+citrate, PHREEQC 3.8.6" if with_citrate
                     else "Pitzer(data0.ypf.R2), PHREEQC 3.8.6")
            for celsius in temperatures:
                row = engine.ph(celsius, {ELEMENTS[k]: v for k, v in totals.items()})
                out.writerow([f"E{next(number):03d}", series, celsius,
                              *[f"{totals.get(c, 0.0):.7g}" for c in COLUMNS], model,
                              f"{row['pH']:.4f}", f"{row['m_OH-(mol/kgw)']:.6g}"])


def dilute():
    pairs = Engine("phreeqc.dat", "END")
    columns = COLUMNS + MORE_COLUMNS
    with open(HERE / "oracle_dilute.csv", "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["id", "series", "T_C", *columns, "ref_model", "pH_ref", "m_OH"])
        number = itertools.count(1)
        for series, temperatures, totals in DILUTE:
            for celsius in temperatures:
                row = pairs.ph(celsius, {ELEMENTS[k]: v for k, v in totals.items()})
                out.writerow([f"F{next(number):03d}", series, celsius,
                              *[f"{totals.get(c, 0.0):.7g}" for c in columns],
                              "phreeqc.dat, PHREEQC 3.8.6", f"{row['pH']:.4f}",
                              f"{row['m_OH-(mol/kgw)']:.6g}"])


def colours():
    import colour

    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    samples = [(0, 0, 0), (255, 255, 255), (255, 0, 0), (0, 255, 0), (0, 0, 255), (128, 128, 128),
               (12, 200, 180), (240, 220, 30), (180, 30, 110), (20, 40, 90), (250, 250, 235),
               (90, 60, 40), (3, 5, 8), (200, 120, 220)]

    def lab(rgb):
        xyz = colour.sRGB_to_XYZ(np.array(rgb) / 255.0)
        return xyz, colour.XYZ_to_Lab(xyz, white)

    with open(HERE / "colour_extra.csv", "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["r", "g", "b", "X", "Y", "Z", "L", "a", "bstar", "C", "h",
                      "r2", "g2", "b2", "dE00_to_second"])
        for i, rgb in enumerate(samples):
            other = samples[(i * 5 + 3) % len(samples)]
            xyz, one = lab(rgb)
            _, two = lab(other)
            _, chroma, hue = colour.models.Lab_to_LCHab(one)
            difference = colour.delta_E(one, two, method="CIE 2000")
            out.writerow([*rgb, *[f"{x:.6f}" for x in xyz], *[f"{x:.5f}" for x in one],
                          f"{chroma:.5f}", f"{hue:.4f}", *other, f"{difference:.5f}"])


def water():
    from iapws import IAPWS95

    with open(HERE / "water_extra.csv", "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["T_C", "density_kg_m3_IAPWS95", "cp_kJ_kgK_IAPWS95"])
        for celsius in (2, 7.5, 17, 22, 33, 48, 62.5, 77, 88, 97):
            w = IAPWS95(T=celsius + 273.15, P=0.101325)
            out.writerow([celsius, f"{w.rho:.3f}", f"{w.cp:.4f}"])


if __name__ == "__main__":
    equilibrium()
    dilute()
    colours()
    water()
