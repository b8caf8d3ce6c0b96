//! The work table of the resolver: what has been read so far, and the questions every block asks.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_quantity::{Basis, Dimension, Figure, Place, System};
use tenter_reference::{Entry, Reference};
use tenter_syntax::{BlockKind, Span};

use crate::lots::ByLot;
use crate::materials;
use crate::names::{Names, Referent};
use crate::phrase::{Measured, NameUse, Phrase, PhraseKind};
use crate::problem::{NameKind, Problem, ProblemKind};
use crate::reading::read_line;
use crate::recipe::{Goods, Header, Layout, Material, MaterialId, Mix, Substance, Vessel};
use crate::sheet::{Body, Row};

/// Everything known while a sheet is being resolved.
pub(crate) struct Binder<'s> {
    pub bodies: Vec<Body<'s>>,
    pub names: Names,
    pub measures: Option<System>,
    pub header: Header,
    pub goods: Vec<Goods>,
    pub materials: Vec<Material>,
    pub mixes: Vec<Mix>,
    pub layouts: Vec<Layout>,
    pub vessels: Vec<Vessel>,
    pub problems: Vec<Problem>,
    /// The `dye` and `chemical` blocks by number.
    pub declared: Vec<MaterialId>,
    /// Reference entries already in use, by id.
    by_reference: BTreeMap<&'static str, MaterialId>,
    /// Pieces asked for over pieces written; 1 unless the recipe is scaled.
    pub scale: f64,
    /// What a scaled recipe does lot by lot.
    pub by_lot: ByLot,
    /// Set while a liquor is settled of which a line could not be read: what misses its liquid then is no news.
    pub hushed: bool,
    /// Volume of liquid in the vessels so far: see `ledger`.
    pub reference: &'static Reference,
}

impl<'s> Binder<'s> {
    pub(crate) fn new(bodies: Vec<Body<'s>>, scale: f64, by_lot: ByLot) -> Self {
        let mut problems = Vec::new();
        crate::sheet::oddities(&bodies, &mut problems);
        let names = Names::gather(&bodies, &mut problems);
        Self {
            bodies,
            names,
            measures: None,
            header: Header::default(),
            goods: Vec::new(),
            materials: Vec::new(),
            mixes: Vec::new(),
            layouts: Vec::new(),
            vessels: Vec::new(),
            problems,
            declared: Vec::new(),
            by_reference: BTreeMap::new(),
            scale,
            by_lot,
            hushed: false,
            reference: Reference::bundled(),
        }
    }

    /// The bodies of one kind, in order. Cloned rows are cheap: references only.
    pub(crate) fn of_kind(&self, kind: BlockKind) -> Vec<Body<'s>> {
        self.bodies.iter().filter(|body| body.block.kind == kind).cloned().collect()
    }

    pub(crate) fn problem(&mut self, place: Place, kind: ProblemKind) {
        self.problems.push(Problem { place, kind });
    }

    /// The phrases of a line.
    pub(crate) fn phrases(&mut self, row: &Row<'_>) -> Vec<Phrase> {
        read_line(row, &self.names, self.measures, &mut self.problems)
    }

    /// A measured phrase as a figure written by the dyer.
    pub(crate) fn figure(&self, row: &Row<'_>, measured: &Measured) -> Figure {
        Figure::written(measured.quantity.value, measured.quantity.dimension, measured.unit, row.place(measured.span))
    }

    /// The figure if its dimension is one of those needed; else a problem and nothing.
    pub(crate) fn expect(
        &mut self,
        row: &Row<'_>,
        measured: &Measured,
        needed: &[Dimension],
        purpose: &'static str,
    ) -> Option<Figure> {
        if needed.contains(&measured.quantity.dimension) {
            return Some(self.figure(row, measured));
        }
        self.wrong_dimension(row, measured, needed, purpose);
        None
    }

    pub(crate) fn wrong_dimension(
        &mut self,
        row: &Row<'_>,
        measured: &Measured,
        needed: &[Dimension],
        purpose: &'static str,
    ) {
        let written = row.text(measured.span);
        let kind = ProblemKind::WrongDimension {
            written: written.into(),
            given: measured.quantity.dimension,
            needed: needed.to_vec(),
            purpose,
            probably: crate::probably::meant(written, measured, needed),
        };
        self.problem(row.place(measured.span), kind);
    }

    /// The first measured phrase of the kinds needed on a key's line, wrong ones told.
    pub(crate) fn value_of(
        &mut self,
        row: &Row<'_>,
        phrases: &[Phrase],
        needed: &[Dimension],
        purpose: &'static str,
        example: &'static str,
    ) -> Option<Figure> {
        for phrase in phrases {
            match &phrase.kind {
                PhraseKind::Measured(measured, _) => {
                    return self.expect(row, measured, needed, purpose);
                }
                PhraseKind::Bare(_, span, _) => {
                    let span = *span;
                    self.problem(row.place(span), ProblemKind::MissingUnit { written: row.text(span).into() });
                    return None;
                }
                PhraseKind::Broken(_) => return None,
                _ => {}
            }
        }
        self.missing(row, purpose, example);
        None
    }

    pub(crate) fn missing(&mut self, row: &Row<'_>, what: &str, example: &str) {
        let span = row.line.head.as_ref().map_or(row.line.span, |head| head.span);
        self.problem(row.place(span), ProblemKind::MissingValue { what: what.into(), example: example.into() });
    }

    /// Tells of a name nothing goes by.
    pub(crate) fn unknown_name(&mut self, row: &Row<'_>, name: &NameUse, expected: NameKind) {
        let written = row.text(name.span).trim();
        if written.is_empty() {
            return;
        }
        let nearest = self.names.nearest(written, expected);
        self.problem(row.place(name.span), ProblemKind::UnknownName { written: written.into(), expected, nearest });
    }

    /// The material or mix a name stands for.
    pub(crate) fn substance(&mut self, row: &Row<'_>, name: &NameUse) -> Option<Substance> {
        // The recipe's own names come first; a mix goes before a reference entry of the same name.
        for referent in &name.referents {
            match referent {
                Referent::Mix(id) => return Some(Substance::Mix(*id)),
                Referent::Declared(number) => {
                    return self.declared.get(*number).map(|id| Substance::Material(*id));
                }
                _ => {}
            }
        }
        let place = row.place(name.span);
        name.referents
            .iter()
            .find_map(|referent| match referent {
                Referent::Reference(Entry::Material(material)) => Some(material.id.as_str()),
                Referent::Reference(Entry::Dye(dye)) => Some(dye.id.as_str()),
                Referent::Water(_) => Some("water"),
                Referent::Zone(crate::recipe::ZoneRef::Ice) => Some("ice"),
                _ => None,
            })
            .and_then(|id| self.reference_material(id, place))
            .map(Substance::Material)
    }

    /// A reference entry brought onto the recipe's list of materials.
    pub(crate) fn reference_material(&mut self, id: &'static str, place: Place) -> Option<MaterialId> {
        if let Some(found) = self.by_reference.get(id) {
            return Some(*found);
        }
        let entry = self.reference.by_id(id)?;
        let material = materials::from_reference(entry, place)?;
        let number = MaterialId(self.materials.len());
        self.materials.push(material);
        self.by_reference.insert(id, number);
        Some(number)
    }

    /// Notes that a reference entry is represented by a declared material of the same name.
    pub(crate) fn stands_for(&mut self, id: &'static str, number: MaterialId) {
        self.by_reference.entry(id).or_insert(number);
    }

    /// Pieces of all goods, or `None` without goods.
    pub(crate) fn all_pieces(&self) -> Option<Figure> {
        let unit = Dimension::Piece.usual_unit(Basis::Absolute);
        (!self.goods.is_empty())
            .then(|| Figure::sum(self.goods.iter().map(|goods| goods.pieces.clone()).collect(), unit))
    }

    /// Dry weight of all goods, kg; `None` when one is not known.
    pub(crate) fn all_dry_mass(&self) -> Option<Figure> {
        let masses: Option<Vec<Figure>> = self.goods.iter().map(|goods| goods.dry_mass.clone()).collect();
        let masses = masses.filter(|masses| !masses.is_empty())?;
        Some(Figure::sum(masses, Dimension::Mass.usual_unit(Basis::Absolute)))
    }
}

/// Text of a span, tidied: blanks run together.
pub(crate) fn tidy(text: &str) -> Arc<str> {
    let mut out = String::with_capacity(text.len());
    for word in text.split_whitespace() {
        if !out.is_empty() {
            out.push(' ');
        }
        out.push_str(word);
    }
    out.into()
}

/// The prose behind a key, as a name with its place; `None` when empty.
pub(crate) fn prose(row: &Row<'_>) -> Option<crate::recipe::Named> {
    let text = row.text(row.line.rest);
    let trimmed = text.trim();
    if trimmed.is_empty() {
        return None;
    }
    let start = row.line.rest.start + (text.len() - text.trim_start().len()) as u32;
    Some(crate::recipe::Named { text: tidy(trimmed), place: row.place(Span::new(start, start + trimmed.len() as u32)) })
}
