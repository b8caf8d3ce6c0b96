//! The table of Pitzer interaction coefficients, each row with its source.
//!
//! A coefficient at a temperature is
//! `P(T) = a1 + a2·(1/T − 1/298.15) + a3·ln(T/298.15) + a4·(T − 298.15)`; rows with only a1 are
//! known at 25 °C only and are used at every temperature.

use super::species::*;

/// Where a row comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// data0.ypf.R2 (Yucca Mountain Pitzer data base), refit of He & Morse 1993,
    /// Geochim. Cosmochim. Acta 57:3533, 0–90 °C.
    HeMorse,
    /// data0.ypf.R2, refit of Greenberg & Møller 1989, Geochim. Cosmochim. Acta 53:2503.
    GreenbergMoller,
    /// data0.ypf.R2, refit of Holmes & Busey 1987.
    HolmesBusey,
    /// data0.ypf.R2, refit of Holmes & Mesmer 1994.
    HolmesMesmer,
    /// data0.ypf.R2, refit of Pabalan & Pitzer 1987, Geochim. Cosmochim. Acta 51:2429.
    PabalanPitzer,
    /// data0.ypf.R2, after Pitzer (ed.) 1991, *Activity Coefficients in Electrolyte Solutions*.
    Pitzer1991,
    /// data0.ypf.R2, after Peiper & Pitzer 1982.
    PeiperPitzer,
    /// data0.ypf.R2, after Königsberger 1999.
    Konigsberger,
    /// data0.ypf.R2, after Rai & Felmy 1995.
    RaiFelmy,
    /// data0.ypf.R2, ammonium chloride after Thiessen & Simonson 1990, sulfate after Clegg & Millero
    /// 1996.
    Ammonium,
    /// data0.ypf.R2, after Felmy & Schroeder 1994 (dissolved silica).
    FelmySchroeder,
    /// PHREEQC 3.8.6 `pitzer.dat` (Harvie, Møller & Weare 1984, Geochim. Cosmochim. Acta 48:723,
    /// and later).
    PhreeqcPitzer,
    /// May, Rowland, Hefter & Königsberger 2011, J. Chem. Eng. Data 56:5066
    /// (doi 10.1021/je2009329), as carried by pyEQL 1.7.0; 25 °C.
    May2011,
    /// Rosenblatt 1981, estimated; the figures are from memory. Sulfite solutions to 0.3 mol/kg come within 0.04 pH of the
    /// specific ion coefficients of ThermoChimie 12a (a test holds them to it).
    RosenblattFromMemory,
    /// No published figure was found: the row repeats that of the like-charged ion named beside it.
    /// An estimate. Citrates to 0.3 mol/kg come within 0.2 pH, metasilicate to 0.03 mol/kg within 0.05 of the specific ion
    /// coefficients of ThermoChimie 12a (a test holds them to it).
    Likeness,
}

/// One cation with one anion.
pub struct Binary {
    /// Cation.
    pub cation: usize,
    /// Anion.
    pub anion: usize,
    /// β⁰.
    pub beta0: [f64; 4],
    /// β¹.
    pub beta1: [f64; 4],
    /// Exponent of β¹, (kg/mol)^½.
    pub alpha1: f64,
    /// β², with exponent 12.
    pub beta2: [f64; 4],
    /// Cφ.
    pub cphi: [f64; 4],
    /// Origin.
    pub source: Source,
}

/// A row known at 25 °C only.
const fn fixed(cation: usize, anion: usize, b0: f64, b1: f64, cphi: f64, source: Source) -> Binary {
    warm(cation, anion, [b0, 0.0, 0.0, 0.0], [b1, 0.0, 0.0, 0.0], [cphi, 0.0, 0.0, 0.0], source)
}

/// A row with its dependence on temperature.
const fn warm(cation: usize, anion: usize, beta0: [f64; 4], beta1: [f64; 4], cphi: [f64; 4], source: Source) -> Binary {
    Binary { cation, anion, beta0, beta1, alpha1: 2.0, beta2: [0.0; 4], cphi, source }
}

use Source::{
    Ammonium, FelmySchroeder, GreenbergMoller, HeMorse, HolmesBusey, HolmesMesmer, Konigsberger, Likeness, May2011,
    PabalanPitzer, PeiperPitzer, PhreeqcPitzer, Pitzer1991, RaiFelmy, RosenblattFromMemory,
};

/// Cation–anion rows.
pub const BINARY: &[Binary] = &[
    warm(
        NA,
        CO3,
        [0.0362048087, 1108.37605, 11.1985553, -0.023301655],
        [1.51206913, 4412.51197, 44.5820703, -0.09989121],
        [0.0052, 0.0, 0.0, 0.0],
        HeMorse,
    ),
    warm(
        NA,
        HCO3,
        [0.028002055, 682.885977, 6.8995857, -0.01445932],
        [0.0440052263, 1129.38915, 11.4108589, -0.02446734],
        [0.0; 4],
        HeMorse,
    ),
    warm(
        NA,
        OH,
        [0.0883443913, -1197.84571, -6.10983033, 0.00743325156],
        [0.244421177, 1627.02502, 9.48250496, -0.0115788697],
        [0.00399943679, 88.2475511, 0.406876285, -0.000475666912],
        HeMorse,
    ),
    warm(
        NA,
        CL,
        [0.0745618073, -470.789056, -1.85114134, 0.00165564633],
        [0.27524069, -521.117635, -2.88035999, 0.00471462791],
        [0.00153693372, 48.0725476, 0.174679979, -0.000156268596],
        GreenbergMoller,
    ),
    warm(
        NA,
        SO4,
        [0.0120596369, -2189.42621, -10.1447681, 0.0119724161],
        [1.11537757, -12744.2345, -67.193449, 0.089122337],
        [0.00657125396, 338.749374, 1.48133893, -0.00164184593],
        GreenbergMoller,
    ),
    warm(
        NA,
        HSO4,
        [0.073434873, 52.560601, 0.420808596, -0.000821232054],
        [0.299942504, 4698.11737, 26.8474688, -0.0373911853],
        [-0.00462067, 0.0, 0.0, 6.82142e-6],
        HolmesMesmer,
    ),
    fixed(NA, ACETATE, 0.1382, 0.3317, -0.00496, May2011),
    fixed(NA, H2PO4, -0.0533, 0.0396, 0.00795, RaiFelmy),
    fixed(NA, HPO4, -0.0583, 1.4655, 0.02938, Pitzer1991),
    fixed(NA, PO4, 0.139, 5.419, -0.04454, May2011),
    fixed(NA, HSO3, 0.0249, 0.2455, 0.0004, RosenblattFromMemory),
    fixed(NA, SO3, 0.08015, 1.185, -0.00436, RosenblattFromMemory),
    // Citrates after the phosphates of the same charge, dihydrogen citrate after acetate.
    fixed(NA, H2CIT, 0.1382, 0.3317, -0.00496, Likeness),
    fixed(NA, HCIT, -0.0583, 1.4655, 0.02938, Likeness),
    fixed(NA, CIT, 0.139, 5.419, -0.04454, Likeness),
    // Silicates after bicarbonate and carbonate at 25 °C.
    fixed(NA, H3SIO4, 0.028, 0.044, 0.0, Likeness),
    fixed(NA, H2SIO4, 0.0362, 1.512, 0.0052, Likeness),
    warm(
        K,
        CL,
        [0.0477811552, -343.299275, -1.38219467, 0.00134298267],
        [0.215510997, -576.387856, -2.88016901, 0.00464483463],
        [-0.000748604891, 36.532773, 0.148205482, -0.000147224869],
        GreenbergMoller,
    ),
    warm(
        K,
        SO4,
        [0.0555358045, -1418.42998, -6.74728848, 0.00826906675],
        [0.796384696, 2067.12594, 0.0, 0.0235793239],
        [-0.0188, 0.0, 0.0, 0.0],
        GreenbergMoller,
    ),
    warm(K, CO3, [0.1488, 0.0, 0.0, 1.788e-3], [1.43, 0.0, 0.0, 2.051e-3], [-0.0015, 0.0, 0.0, 0.0], PhreeqcPitzer),
    warm(K, HCO3, [0.0296, 0.0, 0.0, 0.996e-3], [0.25, 0.0, 0.0, 1.104e-3], [-0.008, 0.0, 0.0, 0.0], PhreeqcPitzer),
    fixed(K, OH, 0.1298, 0.32, 0.0041, Pitzer1991),
    fixed(K, HSO4, -0.0003, 0.1735, 0.0, Pitzer1991),
    fixed(K, HPO4, 0.0248, 1.2743, 0.016387, Pitzer1991),
    fixed(K, H2PO4, -0.1231, 0.09124, 0.02453, May2011),
    fixed(K, PO4, 0.3422, 5.452, -0.09154, May2011),
    fixed(K, ACETATE, 0.1556, 0.3328, -0.00533, May2011),
    // Potassium citrates after the potassium phosphates, dihydrogen citrate after acetate.
    fixed(K, H2CIT, 0.1556, 0.3328, -0.00533, Likeness),
    fixed(K, HCIT, 0.0248, 1.2743, 0.016387, Likeness),
    fixed(K, CIT, 0.3422, 5.452, -0.09154, Likeness),
    // Potassium sulfites and silicates after the sodium salts.
    fixed(K, HSO3, 0.0249, 0.2455, 0.0004, Likeness),
    fixed(K, SO3, 0.08015, 1.185, -0.00436, Likeness),
    fixed(K, H3SIO4, 0.028, 0.044, 0.0, Likeness),
    fixed(K, H2SIO4, 0.0362, 1.512, 0.0052, Likeness),
    warm(
        H,
        CL,
        [0.177000779, -33.4777082, -0.262214535, 0.000125778302],
        [0.292922504, 3402.47027, 19.7936248, -0.0279388381],
        [0.000362, 0.0, 0.0, -3.036e-5],
        HolmesBusey,
    ),
    warm(
        H,
        HSO4,
        [0.209088541, 1054.53606, 5.95728263, -0.00877591957],
        [0.440921659, 296.437457, 2.37332579, -0.00463168109],
        [0.0; 4],
        HolmesMesmer,
    ),
    warm(
        H,
        SO4,
        [0.0986192479, -6703.44441, -41.6861778, 0.0636776572],
        [0.0; 4],
        [0.0593003463, -3029.54834, -16.0719978, 0.0202174821],
        PabalanPitzer,
    ),
    warm(
        NH4,
        CL,
        [0.0524920619, -216.412775, -0.973041353, 0.00106114993],
        [0.187339293, 0.0, -0.142555, 0.00109395],
        [-0.00307437349, 7.39922482, 0.0230711678, -1.762525e-5],
        Ammonium,
    ),
    warm(
        NH4,
        SO4,
        [0.0391672883, 313.414349, 2.51504017, -0.00447419501],
        [0.662846757, 37708.792, 255.814178, -0.42221788],
        [-0.000757091057, -114.018787, -0.756210265, 0.00120646877],
        Ammonium,
    ),
    fixed(NH4, HCO3, -0.038, 0.07, 0.0, Pitzer1991),
    fixed(CA, CL, 0.3159, 1.614, 0.00014, PhreeqcPitzer),
    fixed(CA, HCO3, 0.4, 2.977, 0.0, PhreeqcPitzer),
    fixed(CA, HSO4, 0.2145, 2.5275, 0.0, Pitzer1991),
    Binary {
        cation: CA,
        anion: OH,
        beta0: [-0.1747, 0.0, 0.0, 0.0],
        beta1: [-0.2303, 0.0, 0.0, 0.0],
        alpha1: 2.0,
        beta2: [-5.72, 0.0, 0.0, 0.0],
        cphi: [0.0; 4],
        source: PhreeqcPitzer,
    },
    Binary {
        cation: CA,
        anion: SO4,
        beta0: [0.15, 0.0, 0.0, 0.0],
        beta1: [3.0, 0.0, 0.0, 0.0],
        alpha1: 1.4,
        beta2: [0.0; 4],
        cphi: [0.0; 4],
        source: GreenbergMoller,
    },
    warm(
        MG,
        CL,
        [0.351135695, -65.582184, -0.525061476, 0.000447185031],
        [1.65325488, -2872.87764, -23.0007188, 0.0494572964],
        [0.00652610922, -26.7038299, -0.213795142, 0.000311488279],
        PabalanPitzer,
    ),
    fixed(MG, HCO3, 0.033, 0.8498, 0.0, Pitzer1991),
    fixed(MG, HSO4, 0.4746, 1.7288, 0.0, Pitzer1991),
    Binary {
        cation: MG,
        anion: SO4,
        beta0: [0.222817832, -5688.19179, -32.8401402, 0.0473379023],
        beta1: [3.37712501, -23183.9681, -139.335072, 0.217921221],
        alpha1: 1.4,
        beta2: [-35.2587546, 2170386.08, 13998.2555, -22.8322526],
        cphi: [0.0243650418, 1894.83775, 10.8446198, -0.0156340004],
        source: PabalanPitzer,
    },
    fixed(MGOH, CL, -0.1, 1.658, 0.0, Pitzer1991),
];

/// Two ions of like sign: θ.
pub const THETA: &[(usize, usize, [f64; 4], Source)] = &[
    (CL, CO3, [-0.092, 0.0, 0.0, 0.0], PeiperPitzer),
    (CL, HCO3, [0.0359, 0.0, 0.0, 0.0], PeiperPitzer),
    (CL, SO4, [0.0703278797, 182.513459, 1.32573055, -0.00233222702], GreenbergMoller),
    (CL, OH, [-0.05, 0.0, 0.0, 0.0], PabalanPitzer),
    (CL, HSO4, [-0.006, 0.0, 0.0, 0.0], Pitzer1991),
    (CO3, OH, [0.1, 0.0, 0.0, 0.0], Pitzer1991),
    (CO3, HCO3, [-0.04, 0.0, 0.0, 0.0], Pitzer1991),
    (CO3, SO4, [0.02, 0.0, 0.0, 0.0], Pitzer1991),
    (HCO3, SO4, [0.01, 0.0, 0.0, 0.0], Pitzer1991),
    (OH, SO4, [-0.013, 0.0, 0.0, 0.0], PabalanPitzer),
    (HSO4, SO4, [-0.116842489, -3090.83341, -14.0020408, 0.015402823], HolmesMesmer),
    (H, NA, [0.036, 0.0, 0.0, 0.0], Pitzer1991),
    (H, K, [0.005, 0.0, 0.0, 0.0], Pitzer1991),
    (H, NH4, [-0.019, 0.0, 0.0, 0.0], Pitzer1991),
    (H, CA, [0.092, 0.0, 0.0, 0.0], Pitzer1991),
    (H, MG, [0.1, 0.0, 0.0, 0.0], Pitzer1991),
    (K, NA, [-0.00320349317, 14.0213141, 0.0, 0.0], GreenbergMoller),
    (K, CA, [0.1156, 0.0, 0.0, 0.0], GreenbergMoller),
    (NA, CA, [0.05, 0.0, 0.0, 0.0], GreenbergMoller),
    (NA, MG, [0.07, 0.0, 0.0, 0.0], PabalanPitzer),
    (CA, MG, [0.007, 0.0, 0.0, 0.0], Pitzer1991),
];

/// Two ions of like sign with one of the other: ψ.
pub const PSI: &[(usize, usize, usize, [f64; 4], Source)] = &[
    (CL, HCO3, NA, [-0.0143, 0.0, 0.0, 0.0], PeiperPitzer),
    (CL, CO3, NA, [0.016, 0.0, 0.0, 0.0], Konigsberger),
    (CL, OH, NA, [-0.00601, -9.93, 0.0, 0.0], PabalanPitzer),
    (CL, SO4, NA, [-0.00908854947, -78.6141517, -0.551999137, 0.00094610605], GreenbergMoller),
    (OH, SO4, NA, [-0.0091, -11.69, 0.0, 0.0], PabalanPitzer),
    (CO3, HCO3, NA, [0.002, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO3, OH, NA, [-0.017, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO3, SO4, NA, [-0.005, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (HCO3, SO4, NA, [-0.005, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (HSO4, SO4, NA, [0.0143652661, 258.084011, 1.16443706, -0.00125523553], HolmesMesmer),
    (HSO4, SO4, H, [0.02781, 0.0, 0.0, 0.0], Pitzer1991),
    (CL, SO4, K, [-0.00161523116, 37.5619614, 0.0, 0.000284698333], GreenbergMoller),
    (CL, SO4, CA, [-0.018, 0.0, 0.0, 0.0], GreenbergMoller),
    (CL, SO4, MG, [-0.00796, 32.63, 0.0, 0.0], PabalanPitzer),
    (CL, CO3, K, [0.004, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO3, SO4, K, [-0.009, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (OH, SO4, K, [-0.05, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (K, NA, CO3, [0.003, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO3, HCO3, K, [0.012, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO3, OH, K, [-0.01, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CL, OH, K, [-0.006, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (H, NA, HSO4, [-0.0129, 0.0, 0.0, 0.0], RaiFelmy),
    (K, NA, CL, [-0.00369149429, -5.10212917, 0.0, 0.0], GreenbergMoller),
    (K, NA, SO4, [0.00732101065, -71.6090806, -0.394156322, 0.000606678643], GreenbergMoller),
    (K, NA, HCO3, [-0.003, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (NA, CA, CL, [-0.003, 0.0, 0.0, 0.0], GreenbergMoller),
    (NA, CA, SO4, [-0.012, 0.0, 0.0, 0.0], GreenbergMoller),
    (NA, MG, CL, [-0.012, -9.51, 0.0, 0.0], PabalanPitzer),
    (K, MG, CL, [-0.022, -14.27, 0.0, 0.0], PabalanPitzer),
    (H, MG, CL, [-0.011, 0.0, 0.0, 0.0], PhreeqcPitzer),
];

/// A neutral molecule with an ion: λ.
pub const LAMBDA: &[(usize, usize, [f64; 4], Source)] = &[
    (CO2, NA, [0.085, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO2, K, [0.051, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO2, CA, [0.183, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO2, MG, [0.183, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO2, CL, [-0.005, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (CO2, SO4, [0.075, 0.0, 0.0, 0.0], PhreeqcPitzer),
    (H3PO4, H, [0.29, 0.0, 0.0, 0.0], RaiFelmy),
    (H3PO4, H2PO4, [-0.4, 0.0, 0.0, 0.0], RaiFelmy),
    (H4SIO4, NA, [-0.0788994, 0.0, 0.0, 0.000118667], FelmySchroeder),
    (H4SIO4, CL, [0.142309, 167.356, 1.50701, -0.00321903], FelmySchroeder),
    (H4SIO4, SO4, [0.07759934, 0.0, 0.0, 0.00055333], FelmySchroeder),
];
