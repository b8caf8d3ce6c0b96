//! How far one spelling is from another.

/// Letters to add, drop, change or swap with a neighbour (optimal string alignment) to turn `a` into `b`, without
/// regard to ASCII case; `None` when more than `limit`.
pub fn edits(a: &str, b: &str, limit: usize) -> Option<usize> {
    let a: Vec<char> = a.chars().map(|c| c.to_ascii_lowercase()).collect();
    let b: Vec<char> = b.chars().map(|c| c.to_ascii_lowercase()).collect();
    if a.len().abs_diff(b.len()) > limit {
        return None;
    }
    let mut before: Vec<usize> = vec![0; b.len() + 1];
    let mut above: Vec<usize> = (0..=b.len()).collect();
    for (i, &x) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, &y) in b.iter().enumerate() {
            let at = |line: &[usize], k: usize| line.get(k).copied().unwrap_or(usize::MAX / 2);
            let mut least = (at(&above, j) + usize::from(x != y)).min(at(&above, j + 1) + 1).min(at(&row, j) + 1);
            let swapped = i > 0 && j > 0 && a.get(i - 1) == Some(&y) && b.get(j - 1) == Some(&x);
            if swapped {
                least = least.min(at(&before, j - 1) + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut above, row);
    }
    above.last().copied().filter(|&count| count <= limit)
}
