//! What a finding is known by from one run to the next, wherever its line has moved to.

use std::collections::BTreeMap;

use crate::check::report::Report;
use crate::files::source::SourceFile;

/// Gives each report of a file its fingerprint: a hash of the rule and the words of its line, then which of the alike
/// ones it is.
pub fn mark(reports: &mut [Report], file: &SourceFile) {
    let mut met: BTreeMap<u64, usize> = BTreeMap::new();
    for report in reports {
        let range = file.lines.line_range(report.at.line.saturating_sub(1));
        let line = file.text.get(range).unwrap_or("");
        let hash = hash(report.rule, line);
        let count = met.entry(hash).or_default();
        *count += 1;
        report.fingerprint = format!("{hash:016x}:{count}");
    }
}

/// The 64-bit FNV-1a hash (Fowler, Noll and Vo; IETF draft-eastlake-fnv) of the rule and the words of the line, each
/// closed by a byte no UTF-8 text holds.
fn hash(rule: &str, line: &str) -> u64 {
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    let mut add = |byte: u8| hash = (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    for word in std::iter::once(rule).chain(line.split_whitespace()) {
        word.bytes().for_each(&mut add);
        add(0xff);
    }
    hash
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn blanks_do_not_matter_but_words_do() {
        assert_eq!(hash("no-alkali", "  make  it "), hash("no-alkali", "make it\r\n"));
        assert_ne!(hash("no-alkali", "make it"), hash("no-alkali", "makeit"));
        assert_ne!(hash("no-alkali", "make it"), hash("hard-water", "make it"));
    }
}
