//! Splits what was typed into the lines of a mix.

/// The clauses between commas, semicolons and line breaks. A comma inside a number (`0,5 L`) does not split, so that
/// the reader of numbers can say what it thinks of it; neither does one before a strength (`vinegar, 5%`) or a manner
/// (`water, warm`) that is no amount of something.
pub fn split(typed: &str) -> Vec<String> {
    let mut pieces = vec![String::new()];
    let all: Vec<char> = typed.chars().collect();
    for (at, &c) in all.iter().enumerate() {
        let digit = |at: Option<usize>| at.and_then(|at| all.get(at)).is_some_and(char::is_ascii_digit);
        let breaks = match c {
            ';' | '\n' | '\r' => true,
            ',' => !(digit(at.checked_sub(1)) && digit(Some(at + 1))),
            _ => false,
        };
        match pieces.last_mut() {
            Some(last) if !breaks => last.push(if c.is_whitespace() { ' ' } else { c }),
            _ => pieces.push(String::new()),
        }
    }
    let mut clauses: Vec<String> = Vec::new();
    for piece in &pieces {
        let piece = piece.split_whitespace().collect::<Vec<_>>().join(" ");
        if piece.is_empty() {
            continue;
        }
        match clauses.last_mut() {
            Some(before) if strength(&piece) => {
                before.push_str(", ");
                before.push_str(&piece);
            }
            _ => clauses.push(piece),
        }
    }
    clauses
}

/// `5%`: a number that no name follows.
fn strength(piece: &str) -> bool {
    piece.starts_with(|c: char| c.is_ascii_digit()) && piece.ends_with('%')
}

/// A document with one mix of these lines, made by a step.
pub fn document(clauses: &[String]) -> String {
    let mut text = String::from("edition 1\n\nmix bench bath\n");
    for clause in clauses {
        text.push_str("  ");
        text.push_str(clause);
        text.push('\n');
    }
    text.push_str("\nsteps\n  make bench bath\n");
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn commas_part_amounts_but_not_numbers() {
        assert_eq!(split("8 L water at 40 °C, 60 g/L soda ash"), ["8 L water at 40 °C", "60 g/L soda ash"]);
        assert_eq!(split("0,5 L water,3 g soda ash"), ["0,5 L water", "3 g soda ash"]);
        assert_eq!(split("2 L water; 50 mL vinegar, 5%"), ["2 L water", "50 mL vinegar, 5%"]);
        assert_eq!(split(" , ;\n"), Vec::<String>::new());
    }

    #[test]
    fn nothing_typed_leaves_the_mix() {
        let text = document(&split("8 L water\nsteps\n  soak tees, mix x"));
        assert!(text.lines().skip(3).take(4).all(|line| line.starts_with("  ")), "{text}");
    }
}
