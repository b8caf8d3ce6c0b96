//! Semantic tokens as the protocol packs them.

use tenter_features::File;
use tenter_features::tokens::{Token, TokenKind};
use tenter_syntax::Encoding;
use tower_lsp::lsp_types::{
    SemanticToken, SemanticTokenModifier, SemanticTokenType, SemanticTokensEdit, SemanticTokensLegend,
};

use crate::convert;

/// The types in the order their numbers count.
const TYPES: [SemanticTokenType; 14] = [
    SemanticTokenType::KEYWORD,
    SemanticTokenType::FUNCTION,
    SemanticTokenType::PROPERTY,
    SemanticTokenType::OPERATOR,
    SemanticTokenType::NUMBER,
    SemanticTokenType::TYPE,
    SemanticTokenType::CLASS,
    SemanticTokenType::STRUCT,
    SemanticTokenType::VARIABLE,
    SemanticTokenType::INTERFACE,
    SemanticTokenType::ENUM_MEMBER,
    SemanticTokenType::NAMESPACE,
    SemanticTokenType::STRING,
    SemanticTokenType::COMMENT,
];

/// What the numbers mean.
pub(crate) fn legend() -> SemanticTokensLegend {
    SemanticTokensLegend {
        token_types: TYPES.to_vec(),
        token_modifiers: vec![SemanticTokenModifier::DECLARATION, SemanticTokenModifier::DEFAULT_LIBRARY],
    }
}

const fn number(kind: TokenKind) -> u32 {
    match kind {
        TokenKind::Keyword => 0,
        TokenKind::Verb => 1,
        TokenKind::Key => 2,
        TokenKind::Connector => 3,
        TokenKind::Number | TokenKind::Colour => 4,
        TokenKind::Unit => 5,
        TokenKind::Goods | TokenKind::Vessel => 6,
        TokenKind::Mix => 7,
        TokenKind::Material => 8,
        TokenKind::Layout => 9,
        TokenKind::Zone => 10,
        TokenKind::Steps | TokenKind::Title => 11,
        TokenKind::Text => 12,
        TokenKind::Comment => 13,
    }
}

/// Packs tokens: each tells its distance from the one before.
pub(crate) fn pack(file: &File, tokens: &[Token], encoding: Encoding) -> Vec<SemanticToken> {
    let mut packed = Vec::with_capacity(tokens.len());
    let (mut line, mut column) = (0, 0);
    for token in tokens {
        let start = convert::position(file, token.range.start, encoding);
        let end = convert::position(file, token.range.end, encoding);
        if end.line != start.line || end.character <= start.character {
            continue;
        }
        let delta_line = start.line - line;
        let delta_start = if delta_line == 0 { start.character - column } else { start.character };
        packed.push(SemanticToken {
            delta_line,
            delta_start,
            length: end.character - start.character,
            token_type: number(token.kind),
            token_modifiers_bitset: u32::from(token.declares) | u32::from(token.known) << 1,
        });
        (line, column) = (start.line, start.character);
    }
    packed
}

/// The one edit that leads from the old tokens to the new; none when they are the same.
pub(crate) fn delta(old: &[SemanticToken], new: &[SemanticToken]) -> Vec<SemanticTokensEdit> {
    let front = old.iter().zip(new).take_while(|(a, b)| a == b).count();
    let left = old.len().min(new.len()) - front;
    let back = old.iter().rev().zip(new.iter().rev()).take(left).take_while(|(a, b)| a == b).count();
    let gone = old.len() - front - back;
    let fresh = new.get(front..new.len() - back).unwrap_or(&[]);
    if gone == 0 && fresh.is_empty() {
        return Vec::new();
    }
    vec![SemanticTokensEdit {
        start: u32::try_from(front * 5).unwrap_or(u32::MAX),
        delete_count: u32::try_from(gone * 5).unwrap_or(u32::MAX),
        data: (!fresh.is_empty()).then(|| fresh.to_vec()),
    }]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn token(start: u32) -> SemanticToken {
        SemanticToken { delta_line: 0, delta_start: start, length: 1, token_type: 0, token_modifiers_bitset: 0 }
    }

    #[test]
    fn a_delta_leads_from_old_to_new() {
        let old: Vec<SemanticToken> = [1, 2, 3, 4].map(token).to_vec();
        for new in [vec![], vec![1, 2, 3, 4], vec![1, 9, 3, 4], vec![1, 2, 3, 4, 5], vec![4], vec![1, 2, 2, 3, 4]] {
            let new: Vec<SemanticToken> = new.into_iter().map(token).collect();
            let mut made = old.clone();
            for edit in delta(&old, &new) {
                let start = edit.start as usize / 5;
                let end = start + edit.delete_count as usize / 5;
                made.splice(start..end, edit.data.unwrap_or_default());
            }
            assert_eq!(made, new);
        }
    }
}
