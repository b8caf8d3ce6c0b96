//! The disk, the clock and other processes: the one module that touches them.

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "a face may touch disk and clock")]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

use ignore::WalkBuilder;
use tenter_config::{Configuration, MARKS, NAME};
use tenter_rules::Levels;

/// Larger files are not read into the collection, bytes.
const LARGEST: u64 = 4 << 20;

/// The text of a file; bytes that are no UTF-8 become `�`. None when it cannot be read or is too large.
pub(crate) fn read_text(path: &Path) -> Option<Arc<str>> {
    let size = std::fs::metadata(path).ok()?;
    if !size.is_file() || size.len() > LARGEST {
        return None;
    }
    let bytes = std::fs::read(path).ok()?;
    Some(String::from_utf8_lossy(&bytes).into())
}

/// The text of a file behind a path inside a collection. A link may not lead out of its folder.
pub(crate) fn read_inside(folder: &Path, path: &str) -> Option<Arc<str>> {
    let target = path.split('/').fold(folder.to_path_buf(), |folder, part| folder.join(part));
    let real = target.canonicalize().ok()?;
    if !real.starts_with(folder.canonicalize().ok()?) {
        return None;
    }
    read_text(&real)
}

/// The nearest folder upwards that is marked as the top of a collection.
pub(crate) fn marked_folder(folder: &Path) -> Option<PathBuf> {
    folder.ancestors().find(|folder| is_marked(folder)).map(Path::to_path_buf)
}

fn is_marked(folder: &Path) -> bool {
    MARKS.iter().any(|mark| folder.join(mark).exists())
}

/// What the configuration of a collection says.
#[derive(Default)]
pub(crate) struct Configured {
    pub levels: Levels,
    /// What is wrong with it, with its place.
    pub remarks: Vec<String>,
}

/// Reads the configuration of a collection; none where there is none.
pub(crate) fn configuration(folder: &Path) -> Option<Configured> {
    let path = folder.join(NAME);
    if !path.exists() {
        return None;
    }
    let Some(text) = read_text(&path) else {
        let remarks = vec![format!("{}: cannot be read, so it is not followed", path.display())];
        return Some(Configured { remarks, ..Configured::default() });
    };
    let read = Configuration::read(&text);
    let line = |at: usize| text.get(..at).map_or(0, |before| before.matches('\n').count()) + 1;
    let troubles = read.troubles.iter().map(|it| (it.at.start, it.what.clone()));
    let remarks = read.remarks.iter().map(|it| (it.at.start, format!("{}. {}", it.message, it.help)));
    let told = |(at, what): (usize, String)| format!("{}, line {}: {what}", path.display(), line(at));
    Some(Configured { levels: read.levels, remarks: troubles.chain(remarks).map(told).collect() })
}

/// Every `.dye` file below a folder that no ignore file leaves out, with the folder of its collection; links are not
/// followed. `deep` goes into folders.
pub(crate) fn dye_files(folder: &Path, deep: bool, most: usize) -> Vec<(Arc<Path>, PathBuf)> {
    let depth = if deep { None } else { Some(1) };
    let walk = WalkBuilder::new(folder).require_git(false).follow_links(false).max_depth(depth).build();
    let mut found: Vec<PathBuf> = walk
        .filter_map(Result::ok)
        .filter(|entry| entry.file_type().is_some_and(|kind| kind.is_file()))
        .map(ignore::DirEntry::into_path)
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .take(most)
        .collect();
    found.sort();
    let top: Arc<Path> = match deep {
        true => marked_folder(folder).map_or_else(|| folder.into(), Arc::from),
        false => folder.into(),
    };
    // Each folder is looked at once.
    let mut known: BTreeMap<PathBuf, Arc<Path>> = BTreeMap::from([(folder.to_path_buf(), Arc::clone(&top))]);
    found
        .into_iter()
        .map(|path| {
            let own = path.parent().unwrap_or(folder);
            let below: Vec<&Path> = own.ancestors().take_while(|part| !known.contains_key(*part)).collect();
            let mut collection =
                own.ancestors().find_map(|part| known.get(part)).map_or_else(|| Arc::clone(&top), Arc::clone);
            for part in below.into_iter().rev() {
                if is_marked(part) {
                    collection = part.into();
                }
                known.insert(part.to_path_buf(), Arc::clone(&collection));
            }
            (collection, path)
        })
        .collect()
}

/// Today, as `2026-05-03`, by the clock of the world.
pub(crate) fn today() -> String {
    let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |since| since.as_secs());
    date(i64::try_from(seconds / 86_400).unwrap_or(0))
}

/// The date of a day counted from 1970-01-01, in the Gregorian calendar.
fn date(days: i64) -> String {
    // Years begin in March, so that the leap day comes last.
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let day_of_era = z.rem_euclid(146_097);
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_index = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month_index + 2) / 5 + 1;
    let month = if month_index < 10 { month_index + 3 } else { month_index - 9 };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}")
}

/// Where written-out pages of one kind lie.
#[derive(Clone, Copy)]
pub(crate) enum Shelf {
    /// Pages of the reference data and of rules.
    Reference,
    /// Sheets for the bench.
    Sheets,
}

/// Writes a page to a file that is there to be read only, and gives its path.
pub(crate) fn page(shelf: Shelf, name: &str, text: &str) -> Option<PathBuf> {
    let folder = match shelf {
        Shelf::Reference => format!("tenter-reference-{}", env!("CARGO_PKG_VERSION")),
        // Sheets hold what the dyer wrote: each process has a folder of its own.
        Shelf::Sheets => format!("tenter-sheets-{}", std::process::id()),
    };
    let folder = std::env::temp_dir().join(folder);
    std::fs::create_dir_all(&folder).ok()?;
    let plain: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).take(80).collect();
    let path = folder.join(format!("{plain}.md"));
    if std::fs::read_to_string(&path).is_ok_and(|have| have == text) {
        return Some(path);
    }
    // One that somebody keeps open is replaced as a whole.
    let fresh = folder.join(format!("{plain}.{}.new", std::process::id()));
    std::fs::write(&fresh, text).ok()?;
    let mut rights = std::fs::metadata(&fresh).ok()?.permissions();
    rights.set_readonly(true);
    std::fs::set_permissions(&fresh, rights).ok()?;
    std::fs::rename(&fresh, &path).ok()?;
    Some(path)
}

/// Whether a process is there. One that may not be asked is.
pub(crate) fn alive(process: u32) -> bool {
    #[cfg(unix)]
    {
        let Some(id) = i32::try_from(process).ok().and_then(rustix::process::Pid::from_raw) else { return true };
        !matches!(rustix::process::test_kill_process(id), Err(rustix::io::Errno::SRCH))
    }
    #[cfg(not(unix))]
    {
        let _ = process;
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_become_dates() {
        // The first and last days around leap years, counted by hand from 1970-01-01.
        assert_eq!(date(0), "1970-01-01");
        assert_eq!(date(58), "1970-02-28");
        assert_eq!(date(59), "1970-03-01");
        assert_eq!(date(789), "1972-02-29");
        assert_eq!(date(11_016), "2000-02-29");
        assert_eq!(date(20_454), "2026-01-01");
    }
}
