//! `sift 5 g/piece marigold on ice through a sieve`
//!
//! Needs a powder, and goods; zones or the ice where said.
//!
//! Does: the powder lies on the zones in the share of their weight and stays dry until liquor, steam or the damp of the cloth
//! wets it; on ice it falls with the melt. Without a zone it falls on the side that lies up.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::lay(bench, pass);
}
