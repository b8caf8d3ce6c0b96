//! `goods` blocks.

use tenter_quantity::{Basis, Dimension, Figure, Interval};
use tenter_reference::{Entry, Reference};
use tenter_syntax::{BlockKind, Item, fold_name};

use crate::binder::{Binder, tidy};
use crate::names::unquoted;
use crate::phrase::{Counted, Manner, Phrase, PhraseKind};
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{FibreShare, Goods, GoodsState, Lots, Named, Wetness};
use crate::sheet::{Body, Row};

/// Reads all `goods` blocks.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    for body in binder.of_kind(BlockKind::Goods) {
        let goods = read(binder, &body);
        binder.goods.push(goods);
    }
}

struct Weight {
    figure: Figure,
    of_all: Option<bool>,
}

fn read(binder: &mut Binder<'_>, body: &Body<'_>) -> Goods {
    let place = body.place(if body.block.name.is_empty() { body.block.keyword } else { body.block.name });
    let name = Named { text: tidy(unquoted(body.name())), place };
    let unit = Dimension::Piece.usual_unit(Basis::Absolute);
    let one = Figure::assumed(Interval::ONE, Dimension::Piece, unit, "pieces", "no `pieces` line: one piece is taken");
    let mut goods = Goods {
        name,
        pieces: one,
        lots: None,
        piece_mass: None,
        dry_mass: None,
        fibres: Vec::new(),
        thread: None,
        trim: None,
        state: GoodsState::default(),
        colour: None,
        price: None,
    };
    let mut weight = None;
    for row in &body.rows {
        let Some(head) = &row.line.head else {
            // `12 pieces in 3 lots of 4` may stand by itself.
            if row.line.items.iter().any(|item| matches!(item, Item::Number(_))) {
                pieces(binder, row, &mut goods);
            } else {
                crate::keys::stray(binder, row);
            }
            continue;
        };
        match &*head.word {
            "pieces" => pieces(binder, row, &mut goods),
            "weight" => weight = read_weight(binder, row),
            "fibre" => fibres(binder, row, &mut goods),
            "thread" => goods.thread = thread(binder, row),
            "trim" => goods.trim = crate::binder::prose(row),
            "state" => state(binder, row, &mut goods),
            "colour" => colour(binder, row, &mut goods),
            "price" => goods.price = price(binder, row),
            "accept" => {}
            _ => crate::keys::known_or_told(binder, row, body.block.kind),
        }
    }
    scale_pieces(binder, &mut goods);
    if let Some(weight) = weight {
        weigh(binder, &mut goods, weight);
    }
    goods
}

/// Scaling asks for another number of pieces; all else follows from it.
fn scale_pieces(binder: &mut Binder<'_>, goods: &mut Goods) {
    if binder.scale == 1.0 {
        return;
    }
    let unit = goods.pieces.unit;
    let factor = Figure::assumed(Interval::exact(binder.scale), Dimension::None, unit, "scale", "asked for");
    goods.pieces = Figure::worked(
        "{0} × {1}",
        goods.pieces.value * binder.scale,
        Dimension::Piece,
        unit,
        vec![("", goods.pieces.clone()), ("scale", factor)],
    );
    // Lots stay as large as they are: what fits a tray does not grow.
    let Some(lots) = &mut goods.lots else { return };
    let wanted = goods.pieces.value.best;
    let count = wanted / f64::from(lots.pieces_each.max(1));
    lots.count = count.clamp(1.0, 100_000.0) as u32;
    if (count - f64::from(lots.count)).abs() > 1e-6 {
        let kind = ProblemKind::LotsDoNotAdd { pieces: wanted, lots: lots.count, each: lots.pieces_each };
        let place = lots.place;
        binder.problem(place, kind);
    }
}

fn pieces(binder: &mut Binder<'_>, row: &Row<'_>, goods: &mut Goods) {
    let phrases = binder.phrases(row);
    let mut pieces: Option<(f64, Figure)> = None;
    let mut lots = None;
    let mut each = None;
    for phrase in &phrases {
        let place = row.place(phrase.span);
        match &phrase.kind {
            PhraseKind::Count(Counted::Lots, value, _) => lots = Some(value.best),
            PhraseKind::Count(Counted::Pieces, value, _) if pieces.is_none() => {
                pieces = Some((value.best, Figure::written(*value, Dimension::Piece, goods.pieces.unit, place)));
            }
            PhraseKind::Bare(value, span, _) if pieces.is_none() => {
                pieces =
                    Some((value.best, Figure::written(*value, Dimension::Piece, goods.pieces.unit, row.place(*span))));
            }
            PhraseKind::Bare(value, ..) | PhraseKind::Count(Counted::Pieces, value, _) => each = Some(value.best),
            PhraseKind::Measured(measured, _) => {
                binder.wrong_dimension(row, measured, &[Dimension::Piece], "the number of pieces");
                return;
            }
            _ => {}
        }
    }
    let Some((count, figure)) = pieces else {
        if !phrases.iter().any(|phrase| matches!(phrase.kind, PhraseKind::Broken(_))) {
            binder.missing(row, "how many pieces", "pieces 6");
        }
        return;
    };
    if count.is_nan() || count <= 0.0 {
        binder.problem(row.place(row.line.span), ProblemKind::Unreadable { written: row.text(row.line.span).into() });
        return;
    }
    goods.pieces = figure;
    if let Some(lots) = lots {
        let each = each.unwrap_or(count / lots);
        let place = row.place(row.line.span);
        if (lots * each - count).abs() > 1e-9 {
            binder.problem(place, ProblemKind::LotsDoNotAdd { pieces: count, lots: lots as u32, each: each as u32 });
        }
        if (1.0..=1000.0).contains(&lots) {
            goods.lots = Some(Lots { count: lots as u32, pieces_each: each.round() as u32, place });
        }
    }
}

fn read_weight(binder: &mut Binder<'_>, row: &Row<'_>) -> Option<Weight> {
    let phrases = binder.phrases(row);
    let each = phrases.iter().any(|phrase| matches!(phrase.kind, PhraseKind::Manner(Manner::Each)));
    let in_all = phrases.iter().any(|phrase| matches!(phrase.kind, PhraseKind::Manner(Manner::InAll)));
    let figure = binder.value_of(row, &phrases, &[Dimension::Mass], "the weight of the goods", "weight 165 g each")?;
    let per_piece = phrases.iter().any(|phrase| matches!(&phrase.kind, PhraseKind::Measured(measured, _) if measured.quantity.basis == Basis::PerPiece));
    let of_all = if each || per_piece { Some(false) } else { in_all.then_some(true) };
    Some(Weight { figure, of_all })
}

fn weigh(binder: &mut Binder<'_>, goods: &mut Goods, weight: Weight) {
    let unit = weight.figure.unit;
    let gram = Dimension::Mass.usual_unit(Basis::Absolute);
    let written = unscaled(binder, goods);
    let of_all = weight.of_all.unwrap_or_else(|| {
        if written > 1.0 {
            let place = weight.figure.place().unwrap_or(goods.name.place);
            binder.problem(place, ProblemKind::WeightOfWhat { written: weight.figure.show().into(), pieces: written });
        }
        false
    });
    let piece = if of_all {
        let count = Figure::worked(
            "{0}",
            Interval::exact(written),
            Dimension::Piece,
            goods.pieces.unit,
            vec![("pieces as written", goods.pieces.clone())],
        );
        Figure::worked(
            "{0} ÷ {1}",
            weight.figure.value * (1.0 / written.max(1.0)),
            Dimension::Mass,
            gram,
            vec![("", weight.figure.clone()), ("", count)],
        )
    } else {
        weight.figure.clone()
    };
    goods.dry_mass = Some(if of_all && binder.scale == 1.0 {
        weight.figure
    } else {
        Figure::worked(
            "{0} × {1}",
            piece.value * goods.pieces.value,
            Dimension::Mass,
            if unit.basis == Basis::Absolute { unit } else { gram },
            vec![("a piece", piece.clone()), ("", goods.pieces.clone())],
        )
    });
    goods.piece_mass = Some(piece);
}

fn unscaled(binder: &Binder<'_>, goods: &Goods) -> f64 {
    goods.pieces.value.best / binder.scale
}

fn fibres(binder: &mut Binder<'_>, row: &Row<'_>, goods: &mut Goods) {
    let phrases = binder.phrases(row);
    let mut shares: Vec<FibreShare> = Vec::new();
    for phrase in &phrases {
        match &phrase.kind {
            PhraseKind::Measured(measured, name) => {
                if measured.quantity.dimension != Dimension::PerCent {
                    binder.wrong_dimension(row, measured, &[Dimension::PerCent], "the share of a fibre");
                    continue;
                }
                let share = binder.figure(row, measured);
                match name {
                    Some(name) => shares.push(fibre(binder, row, name.span, share)),
                    None => binder.missing(row, "which fibre", "fibre 100% cotton"),
                }
            }
            PhraseKind::Name(name) => {
                let unit = Dimension::PerCent.usual_unit(Basis::Absolute);
                let share = Figure::assumed(
                    Interval::ONE,
                    Dimension::PerCent,
                    unit,
                    "share of the fibre",
                    "no share is written: all of it is taken to be this fibre",
                );
                shares.push(fibre(binder, row, name.span, share));
            }
            PhraseKind::Bare(_, span, _) => {
                let span = *span;
                binder.problem(row.place(span), ProblemKind::MissingUnit { written: row.text(span).into() });
            }
            _ => {}
        }
    }
    if phrases.is_empty() {
        binder.missing(row, "which fibre", "fibre 100% cotton");
    }
    let sum: f64 = shares.iter().map(|share| share.share.value.best).sum();
    if !shares.is_empty() && (sum - 1.0).abs() > 0.005 {
        let of = format!("the fibres of {}", goods.name.text);
        binder.problem(row.place(row.line.rest), ProblemKind::Shares { of: of.into(), sum });
    }
    goods.fibres = shares;
}

fn fibre(binder: &mut Binder<'_>, row: &Row<'_>, span: tenter_syntax::Span, share: Figure) -> FibreShare {
    let place = row.place(span);
    let name = Named { text: tidy(row.text(span)), place };
    let fibre = match Reference::bundled().find(&name.text) {
        Some(Entry::Fibre(found)) => Some(found),
        _ => {
            let nearest = binder.names.nearest(&name.text, NameKind::Fibre);
            binder.problem(
                place,
                ProblemKind::UnknownName { written: name.text.clone(), expected: NameKind::Fibre, nearest },
            );
            None
        }
    };
    FibreShare { name, fibre, share }
}

fn thread(binder: &mut Binder<'_>, row: &Row<'_>) -> Option<FibreShare> {
    let unit = Dimension::PerCent.usual_unit(Basis::Absolute);
    let share = Figure::assumed(Interval::ONE, Dimension::PerCent, unit, "share of the fibre", "thread of one fibre");
    let Some(value) = crate::binder::prose(row) else {
        binder.missing(row, "the thread's fibre", "thread cotton");
        return None;
    };
    let span = tenter_syntax::Span::new(value.place.start, value.place.end);
    Some(fibre(binder, row, span, share))
}

fn state(binder: &mut Binder<'_>, row: &Row<'_>, goods: &mut Goods) {
    let phrases: Vec<Phrase> = binder.phrases(row);
    let pickup = phrases.iter().find_map(|phrase| match &phrase.kind {
        PhraseKind::Measured(measured, _) if measured.quantity.dimension == Dimension::PerCent => {
            Some(binder.figure(row, measured))
        }
        _ => None,
    });
    let text = fold_name(row.text(row.line.rest));
    let says = |word: &str| text.split([' ', ',']).any(|part| part == word);
    let wetness = if says("damp") || says("moist") {
        Some(Wetness::Damp)
    } else if says("wet") || says("soaked") {
        Some(Wetness::Wet)
    } else if says("dry") {
        Some(Wetness::Dry)
    } else {
        None
    };
    let scoured =
        if says("unwashed") || says("unscoured") || text.contains("not scoured") || text.contains("not washed") {
            Some(false)
        } else if says("scoured")
            || says("prewashed")
            || says("washed")
            || text.contains("prepared for dyeing")
            || says("pfd")
        {
            Some(true)
        } else {
            None
        };
    // Words of the state line are free; only names reported as unknown by other keys matter, so nothing is told here.
    goods.state = GoodsState { place: Some(row.place(row.line.rest)), scoured, pickup, wetness };
}

fn colour(binder: &mut Binder<'_>, row: &Row<'_>, goods: &mut Goods) {
    let phrases = binder.phrases(row);
    goods.colour = phrases.iter().find_map(|phrase| match phrase.kind {
        PhraseKind::Colour(rgb) => Some((rgb, row.place(phrase.span))),
        _ => None,
    });
}

fn price(binder: &mut Binder<'_>, row: &Row<'_>) -> Option<Figure> {
    let phrases = binder.phrases(row);
    binder.value_of(row, &phrases, &[Dimension::Money], "the price of a piece", "price 4.20 EUR each")
}
