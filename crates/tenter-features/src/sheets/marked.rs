//! Text from a recipe put into marked-up pages: none of its characters is taken for markup.

/// In HTML.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
    out
}

/// A page of text as HTML: a line at the left edge is a heading, what is set in below it stays as it is laid out.
pub(super) fn html(text: &str) -> String {
    let mut out = String::new();
    let mut body: Vec<&str> = Vec::new();
    let mut lines = text.lines().peekable();
    let flush = |body: &mut Vec<&str>, out: &mut String| {
        while body.last().is_some_and(|line| line.trim().is_empty()) {
            body.pop();
        }
        if !body.is_empty() {
            out.push_str(&format!("<pre>{}</pre>\n", escaped(&body.join("\n"))));
        }
        body.clear();
    };
    while let Some(line) = lines.next() {
        let ruled = lines.peek().is_some_and(|next| next.starts_with('─'));
        if ruled {
            flush(&mut body, &mut out);
            out.push_str(&format!("<h1>{}</h1>\n", escaped(line)));
            lines.next();
        } else if !line.is_empty() && !line.starts_with(' ') {
            flush(&mut body, &mut out);
            let paragraph = line.ends_with(['.', '!', '?']);
            let name = if paragraph { "p" } else { "h2" };
            out.push_str(&format!("<{name}>{}</{name}>\n", escaped(line)));
        } else if !(body.is_empty() && line.is_empty()) {
            body.push(line);
        }
    }
    flush(&mut body, &mut out);
    out
}

/// In Markdown: what would be read as markup is escaped, breaks become blanks.
pub(super) fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let one_line = text.replace(['\n', '\r', '\t'], " ");
    for c in tenter_account::text::safe::safe(&one_line).chars() {
        match c {
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '#' | '|' | '&' | '~' | '!' => {
                out.push('\\');
                out.push(c);
            }
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_stranger_writes_stays_text() {
        assert_eq!(escaped("<img src=x onerror='a'>&\""), "&lt;img src=x onerror=&#39;a&#39;&gt;&amp;&quot;");
        assert_eq!(plain("a*b [x](y) <b>\n| c"), "a\\*b \\[x\\](y) \\<b\\> \\| c");
    }

    #[test]
    fn headings_and_tables_come_apart() {
        let text = "Tide\n────\nA short word.\n\nGoods\n        pieces\n  tees       6\n\nWater\n  8 L\n";
        let page = html(text);
        assert_eq!(
            page,
            "<h1>Tide</h1>\n<p>A short word.</p>\n<h2>Goods</h2>\n<pre>        pieces\n  tees       6</pre>\n\
             <h2>Water</h2>\n<pre>  8 L</pre>\n"
        );
    }
}
