//! What each recipe of a text comes to, and how it goes.

use serde::Serialize;
use tenter_account::rehearsal::telling::{self, Account};
use tenter_account::totals::sheet::{Sheet, sheet_of};
use tenter_account::{Picked, pick};
use tenter_features::Snapshot;
use tenter_rehearse::rehearse;
use tenter_resolve::{Scale, sheets};

/// Every recipe and variant of a text, or why there is none to show.
#[derive(Debug, Serialize)]
pub struct Answer {
    /// Said in place of the recipes or above them.
    trouble: Option<String>,
    recipes: Vec<Told>,
}

#[derive(Debug, Serialize)]
struct Told {
    /// Pieces the figures are for; none where they are not known.
    pieces: Option<f64>,
    /// How many things could not be read and leave figures open.
    open: usize,
    totals: Sheet,
    account: Account,
}

/// More pieces than these are not reckoned.
const MOST_PIECES: f64 = 1e6;

/// What the text called `path` comes to, as written or for so many pieces.
pub fn account(snapshot: &Snapshot, path: &str, pieces: Option<f64>) -> Option<Answer> {
    let file = snapshot.file(path)?;
    let scale = match pieces {
        None => Scale::AsWritten,
        Some(pieces) if pieces > 0.0 && pieces <= MOST_PIECES => Scale::Pieces(pieces),
        Some(_) => {
            let trouble = Some("Give a number of pieces above zero and not above a million.".to_owned());
            return Some(Answer { trouble, recipes: Vec::new() });
        }
    };
    let sheets = sheets(&file.document, &file.path, snapshot);
    let picked = pick(&sheets, scale);
    let trouble = match scale {
        Scale::AsWritten => None,
        _ => picked.iter().find_map(Picked::broken_lots),
    };
    if trouble.is_some() {
        return Some(Answer { trouble, recipes: Vec::new() });
    }
    let told = |picked: &Picked<'_>| {
        let rehearsal = rehearse(&picked.recipe);
        Told {
            pieces: picked.recipe.totals.pieces.as_ref().map(|figure| figure.value.best),
            open: picked.errors(),
            totals: sheet_of(picked, &rehearsal, &*file),
            account: telling::account(picked, &rehearsal, &*file),
        }
    };
    let recipes = picked.iter().map(told).collect();
    Some(Answer { trouble, recipes })
}
