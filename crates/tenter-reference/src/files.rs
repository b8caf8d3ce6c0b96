//! The data files as text.

/// Text of every data file. Field names are file names without `.toml`.
#[derive(Debug, Clone, Copy)]
pub struct Files<'a> {
    /// Sources that figures refer to.
    pub sources: &'a str,
    /// Hazard statements.
    pub hazards: &'a str,
    /// Groups and pairs that must never meet.
    pub incompatible: &'a str,
    /// Dye classes.
    pub dye_classes: &'a str,
    /// Dyes.
    pub dyes: &'a str,
    /// Fibres.
    pub fibres: &'a str,
    /// Materials.
    pub materials: &'a str,
}

impl Files<'static> {
    /// The files built into the program.
    pub const fn bundled() -> Self {
        Self {
            sources: include_str!("../data/sources.toml"),
            hazards: include_str!("../data/hazards.toml"),
            incompatible: include_str!("../data/incompatible.toml"),
            dye_classes: include_str!("../data/dye_classes.toml"),
            dyes: include_str!("../data/dyes.toml"),
            fibres: include_str!("../data/fibres.toml"),
            materials: include_str!("../data/materials.toml"),
        }
    }

    /// The same as JSON, for quick reading.
    pub(crate) const fn digested() -> Self {
        Self {
            sources: include_str!(concat!(env!("OUT_DIR"), "/sources.json")),
            hazards: include_str!(concat!(env!("OUT_DIR"), "/hazards.json")),
            incompatible: include_str!(concat!(env!("OUT_DIR"), "/incompatible.json")),
            dye_classes: include_str!(concat!(env!("OUT_DIR"), "/dye_classes.json")),
            dyes: include_str!(concat!(env!("OUT_DIR"), "/dyes.json")),
            fibres: include_str!(concat!(env!("OUT_DIR"), "/fibres.json")),
            materials: include_str!(concat!(env!("OUT_DIR"), "/materials.json")),
        }
    }
}
