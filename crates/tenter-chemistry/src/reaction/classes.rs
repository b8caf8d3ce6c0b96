//! Conditions of fixation of each class of reactive dye.

/// A class of fibre-reactive dye, by its reactive group.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DyeClass {
    /// Dichlorotriazine.
    Dichlorotriazine,
    /// Monofluorotriazine.
    Monofluorotriazine,
    /// Difluorochloropyrimidine.
    Difluorochloropyrimidine,
    /// Dichloroquinoxaline.
    Dichloroquinoxaline,
    /// Vinyl sulfone.
    VinylSulfone,
    /// Monochlorotriazine.
    Monochlorotriazine,
    /// Trichloropyrimidine.
    Trichloropyrimidine,
}

/// What a full batch of a class takes. Each triple is low, best, high.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Batch {
    /// Reference temperature, K.
    pub reference_temperature: f64,
    /// Time of a full batch at the reference temperature, s.
    pub full_time: (f64, f64, f64),
    /// Warming above the reference temperature that halves the time, K.
    pub halving: (f64, f64, f64),
    /// Least and greatest pH at which the batch goes on as it should, both read at about 25 °C.
    pub ph_window: (f64, f64),
    /// Where the figures come from.
    pub source: &'static str,
}

/// Share of dichlorotriazine dye that is fixed at home, low and high: 50–80 % (Smith 2003, quoted);
/// for all reactive dyes 60–90 % (US EPA 1995).
pub const FIXATION_YIELD: (f64, f64) = (0.5, 0.8);

const HOUR: f64 = 3600.0;

impl DyeClass {
    /// Conditions of a full batch.
    ///
    /// Dichlorotriazine: 24 h at 21 °C, halved for each 5–6 °C of warming; common practice, no
    /// source. The others: usual exhaust temperatures from textile reference tables, times common
    /// practice, no source; warming for monochlorotriazine from the published hydrolysis of
    /// C.I. Reactive Red 24 (Dyestuffs and Coloration 2004(6):331, abstract: 2.0 to 2.4 times for
    /// 10 K), which is used with a wider spread for the classes without a figure. pH windows from
    /// memory.
    #[must_use]
    pub fn batch(self) -> Batch {
        let slow = (7.0, 9.0, 11.0);
        let table = |celsius: f64, full_time: (f64, f64, f64), halving, ph_window, source| Batch {
            reference_temperature: celsius + 273.15,
            full_time: (full_time.0 * HOUR, full_time.1 * HOUR, full_time.2 * HOUR),
            halving,
            ph_window,
            source,
        };
        let practice = "common practice, no source";
        match self {
            Self::Dichlorotriazine => table(21.0, (12.0, 24.0, 36.0), (5.0, 5.5, 6.0), (10.5, 12.0), practice),
            Self::Monofluorotriazine => table(50.0, (0.7, 1.0, 2.0), slow, (10.5, 12.0), practice),
            Self::Difluorochloropyrimidine => table(40.0, (0.7, 1.0, 2.0), slow, (10.5, 12.0), practice),
            Self::Dichloroquinoxaline => table(50.0, (0.7, 1.0, 2.0), slow, (10.5, 12.0), practice),
            Self::VinylSulfone => table(60.0, (0.7, 1.0, 1.5), slow, (10.8, 12.3), practice),
            Self::Monochlorotriazine => table(
                80.0,
                (0.7, 1.0, 1.5),
                (7.5, 9.0, 10.5),
                (10.8, 12.3),
                "time: common practice, no source; warming: Dyestuffs and Coloration 2004(6):331",
            ),
            Self::Trichloropyrimidine => table(90.0, (0.7, 1.0, 1.5), slow, (10.8, 12.3), practice),
        }
    }
}
