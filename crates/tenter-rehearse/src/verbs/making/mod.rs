//! Mixes are weighed out and made.

pub(super) mod dissolve;
pub(super) mod make;
pub(super) mod paste;
pub(super) mod weigh;

use tenter_resolve::recipe::LiquorKind;

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::state::LiquorName;

/// `dissolve 9 g lagoon in 200 mL water`, `dissolve soda ash into dye bath`, `paste 9 g lagoon with 20 mL water`.
fn stir_up(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let made = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(_) | LiquorKind::Vessel(_) | LiquorKind::Current) => {
            return super::bathing::put_to(bench, pass);
        }
        Some(LiquorKind::Bath(ingredients)) => {
            let index = bench.bath_of(pass, ingredients, pass.step.place);
            for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
                let part = bench.take(pass, ingredient);
                if let Some(liquor) = bench.liquor_mut(index) {
                    liquor.contents.add(part.contents);
                }
            }
            bench.current = Some(index);
            index
        }
        _ => {
            let mut contents = Contents::default();
            for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
                contents.add(bench.take(pass, ingredient).contents);
            }
            let room = bench.room.clone();
            bench.stand(LiquorName::InPlace(pass.step.place), contents, None, room, true)
        }
    };
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    bench.note_together(made, bench.clock.elapsed);
    bench.finished(made);
}
