//! A workshop with children.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::{Figure, Place};
use tenter_rehearse::{EventKind, Frame};
use tenter_resolve::recipe::{LiquorKind, MaterialId, Named, Step};

pub(crate) const RULE: Rule = Rule {
    name: "children-at-work",
    summary: "A recipe for children has powder, harsh chemicals or hot water in steps that are not set apart for an adult.",
    group: Group::People,
    level: Level::Warning,
    since: "1",
    page: include_str!("children_at_work.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let header =
        [context.recipe.name.as_ref(), context.recipe.header.about.as_ref(), context.recipe.header.purpose.as_ref()];
    let Some(said) = header.into_iter().flatten().find(|named| speaks_of_children(&named.text)) else { return };
    let mut kinds = Vec::new();
    for event in context.events() {
        let EventKind::PowderHandled { material, at, .. } = &event.kind else { continue };
        let Some(frame) = context.rehearsal.frames.get(event.frame).filter(|frame| !for_adults(context, frame)) else {
            continue;
        };
        let Some(kind) = Kind::of(context, *material) else { continue };
        let material = context.material(*material);
        if kinds.contains(&kind) || (kind == Kind::Dye && kept_from_them(context, &["powder", "powders", "dust"])) {
            continue;
        }
        kinds.push(kind);
        found.push(
            finding(said, frame.place, format!("{} is handled here: {}", material.name, kind.why()), kind)
                .note(*at, "this one"),
        );
    }
    for frame in context.rehearsal.frames.iter().filter(|frame| !for_adults(context, frame)) {
        let Some(hot) = context.step_at(frame.place).and_then(|step| hottest(context, step)) else { continue };
        if kept_from_them(context, &["hot", "scalding", "boiling"]) {
            return;
        }
        let message = format!("water of {} is worked with here: from 50 °C on it scalds a child's hand", hot.show());
        found.push(finding(said, frame.place, message, Kind::Hot).figure(hot));
        return;
    }
}

fn finding(said: &Named, place: Place, message: String, kind: Kind) -> Finding {
    Finding::new(&RULE, place, message).note(said.place, "children take part, by this").help(format!(
        "{} Put these steps in a group of their own whose name says who does them, such as `steps beforehand by an adult`. The rules of your school, club or authority come first.",
        kind.instead()
    ))
}

/// What should not be in children's hands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Dye,
    Caustic,
    Reducer,
    Bleach,
    Hot,
}

impl Kind {
    fn of(context: &Context<'_>, id: MaterialId) -> Option<Self> {
        let material = context.material(id);
        if material.is_dye {
            return Some(Self::Dye);
        }
        let groups = &material.reference?.hazard_groups;
        let any = |wanted: &[&str]| groups.iter().any(|group| wanted.contains(&group.as_str()));
        let corrosive = context.hazard(id, &["H314"]).is_some();
        if any(&["dithionite", "thiourea-dioxide"]) {
            Some(Self::Reducer)
        } else if any(&["hypochlorite", "peroxide", "oxidiser"]) {
            Some(Self::Bleach)
        } else if any(&["caustic-soda"]) || corrosive {
            Some(Self::Caustic)
        } else {
            None
        }
    }

    const fn why(self) -> &'static str {
        match self {
            Self::Dye => "breathing the powder can make a child allergic for life",
            Self::Caustic => "it burns skin and blinds",
            Self::Reducer => "it can catch fire when damp and gives off a biting gas",
            Self::Bleach => "it harms skin, eyes and lungs",
            Self::Hot => "it scalds",
        }
    }

    const fn instead(self) -> &'static str {
        match self {
            Self::Dye => {
                "Let an adult with mask and gloves make liquid stocks beforehand, in another room, and give the children bottles."
            }
            Self::Caustic => {
                "Leave it out, or let an adult use it with gloves and goggles while no child is in the room."
            }
            Self::Reducer => "Let an adult make the vat beforehand, outdoors or in moving air.",
            Self::Bleach => "Let an adult do the bleaching before or after.",
            Self::Hot => "Use hand-warm water with the children and let an adult do the hot steps.",
        }
    }
}

/// Whether the group of steps says that grown people do it, or that it is done before anybody comes.
fn for_adults(context: &Context<'_>, frame: &Frame) -> bool {
    let name = context.recipe.groups.get(frame.group.0).and_then(|group| group.name.as_ref());
    name.is_some_and(|name| words(&name.text).any(|word| ADULTS.contains(&word.as_str())))
}

/// Whether a note of the recipe leaves something to the grown people: `powder and hot water are for the leaders`.
fn kept_from_them(context: &Context<'_>, what: &[&str]) -> bool {
    context.recipe.header.notes.iter().any(|note| {
        let said: Vec<String> = words(&note.text).collect();
        let any = |wanted: &[&str]| said.iter().any(|word| wanted.contains(&word.as_str()));
        any(what) && any(ADULTS)
    })
}

const ADULTS: &[&str] = &[
    "adult",
    "adults",
    "grown-up",
    "grown-ups",
    "grownups",
    "teacher",
    "teachers",
    "leader",
    "leaders",
    "helper",
    "helpers",
    "parent",
    "parents",
    "beforehand",
];

/// Water hot enough to scald small hands, in work that hands do.
fn hottest<'a>(context: &'a Context<'_>, step: &'a Step) -> Option<&'a Figure> {
    let verb = step.verb?;
    if !BY_HAND.contains(&verb.name) {
        return None;
    }
    let bath: &[_] = match &step.liquor {
        Some(liquor) => match &liquor.kind {
            LiquorKind::Bath(parts) => parts,
            _ => &[],
        },
        None => &[],
    };
    let drawn = match (&step.liquor, &step.source) {
        (Some(liquor), _) => match &liquor.kind {
            LiquorKind::Mix(id) => context.recipe.mixes.get(id.0).and_then(|mix| mix.temperature.as_ref()),
            LiquorKind::Water(warm) => Some(warm),
            _ => None,
        },
        _ => None,
    };
    step.applied
        .iter()
        .chain(bath)
        .filter_map(|part| part.temperature.as_ref())
        .chain(drawn)
        .chain(&step.temperature)
        .find(|temperature| temperature.value.best >= SCALDS)
}

/// 50 °C in K; common practice, no source.
const SCALDS: f64 = 323.15;
/// Work that hands do.
const BY_HAND: [&str; 16] = [
    "irrigate", "pour", "squirt", "spray", "dip", "brush", "squeeze", "lift", "soak", "wet out", "scour", "wash",
    "rinse", "soap off", "immerse", "dye",
];

/// Words in lower case, apostrophes and hyphens left in.
fn words(text: &str) -> impl Iterator<Item = String> {
    text.to_lowercase()
        .replace('’', "'")
        .split(|letter: char| !(letter.is_alphanumeric() || letter == '\'' || letter == '-'))
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect::<Vec<_>>()
        .into_iter()
}

/// Whether children do the work, by the words. A child's shirt is no child at work: `children's`, `kids'` and `school`
/// count only where a word such as `workshop` or `class` follows.
fn speaks_of_children(text: &str) -> bool {
    let words: Vec<String> = words(text).collect();
    let plain = |word: &str| CHILDREN.contains(&word);
    let owned = |word: &str| {
        ["school", "schools", "youth", "teen", "teenage", "scout"].contains(&word)
            || word.strip_suffix("'s").or_else(|| word.strip_suffix('\'')).is_some_and(plain)
    };
    let occasion = |word: &String| OCCASIONS.contains(&word.as_str());
    words.iter().enumerate().any(|(at, word)| {
        let worn = words.iter().skip(at.saturating_sub(3)).take(7).any(|near| WORN.contains(&near.as_str()));
        let near = words.iter().any(occasion);
        let next = words.iter().skip(at + 1).take(2).any(occasion);
        (plain(word) && (near || !worn)) || (owned(word) && next)
    })
}

const CHILDREN: [&str; 16] = [
    "children",
    "kids",
    "pupils",
    "pupil",
    "schoolchildren",
    "toddlers",
    "youngsters",
    "kindergarten",
    "teenagers",
    "teens",
    "teenager",
    "youths",
    "minors",
    "scouts",
    "students",
    "preschoolers",
];
const OCCASIONS: &[&str] = &[
    "workshop",
    "workshops",
    "class",
    "classes",
    "classroom",
    "lesson",
    "lessons",
    "course",
    "party",
    "camp",
    "club",
    "group",
    "afternoon",
    "morning",
    "project",
    "fair",
    "birthday",
];
const WORN: &[&str] = &[
    "shirt",
    "shirts",
    "tee",
    "tees",
    "dress",
    "dresses",
    "socks",
    "leggings",
    "trousers",
    "bodysuits",
    "clothes",
    "clothing",
    "wear",
    "sizes",
    "size",
    "uniform",
];
