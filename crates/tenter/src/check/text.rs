//! Reports for people.

use std::fmt;

use miette::{
    Diagnostic, GraphicalReportHandler, GraphicalTheme, LabeledSpan, Severity, SourceCode, ThemeCharacters, ThemeStyles,
};
use tenter_rules::Level;

use crate::check::report::Report;
use crate::check::window::Window;
use crate::files::source::SourceFile;
use crate::output::{Output, WIDTH};
use crate::text::safe::{safe, safe_lines};
use crate::text::wrap::{paragraph, wrap};

/// How reports look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// Not shown as text.
    None,
    /// Letters and ASCII lines.
    Plain,
    /// Colours.
    Coloured,
}

impl Style {
    /// What suits the stream.
    pub fn of(output: &Output) -> Self {
        if output.coloured { Self::Coloured } else { Self::Plain }
    }

    fn theme(self) -> GraphicalTheme {
        match self {
            Self::None | Self::Plain => GraphicalTheme::none(),
            Self::Coloured => GraphicalTheme { characters: ThemeCharacters::unicode(), styles: ThemeStyles::ansi() },
        }
    }
}

/// Narrowest column a label is set in.
const NARROWEST: usize = 24;
/// Columns the renderer puts in front of a source line, at most.
const GUTTER: usize = 10;

/// One report with the lines it is about.
pub fn render(report: &Report, file: &SourceFile, style: Style) -> String {
    let notes = || report.notes.iter().filter_map(|(at, text)| Some((at.as_ref()?, text)));
    let own: Vec<(usize, usize)> =
        std::iter::once(report.at.bytes).chain(notes().filter(|(at, _)| at.own).map(|(at, _)| at.bytes)).collect();
    let window = Window::new(file, &own);
    let mut labels = vec![LabeledSpan::new_primary_with_span(None, window.span(report.at.bytes))];
    for (at, text) in notes().filter(|(at, _)| at.own) {
        let span = window.span(at.bytes);
        let room = WIDTH.saturating_sub(GUTTER + window.columns_before(span.0 + span.1 / 2)).max(NARROWEST);
        labels.push(LabeledSpan::new_with_span(Some(wrap(&safe(text), room).join("\n")), span));
    }
    let shown = Shown { report, window, labels };
    let handler = GraphicalReportHandler::new_themed(style.theme())
        .with_links(false)
        .with_width(WIDTH)
        .with_break_words(false)
        .tab_width(4);
    let mut out = String::new();
    if handler.render_report(&mut out, &shown).is_err() {
        // The renderer would not have it: the plain facts then.
        out = format!("{}\n", plain_line(report));
    }
    for (at, text) in notes().filter(|(at, _)| !at.own) {
        out.push_str(&paragraph(
            &format!("note: {}:{}:{}: {}", safe(&at.file), at.line, at.column, safe(text)),
            2,
            8,
            WIDTH,
        ));
    }
    for text in report.notes.iter().filter(|(at, _)| at.is_none()).map(|(_, text)| text) {
        out.push_str(&paragraph(&format!("note: {}", safe(text)), 2, 8, WIDTH));
    }
    for fix in &report.fixes {
        let sure = if fix.safe { "fix" } else { "try" };
        out.push_str(&paragraph(&format!("{sure}:  {}", safe(&fix.title)), 2, 8, WIDTH));
    }
    if let Some(accepted) = &report.accepted {
        let at = if accepted.own { "on line " } else { &format!("in {}:", safe(&accepted.file)) };
        out.push_str(&format!("  accepted {at}{}\n", accepted.line));
    }
    out.push_str(&format!("  more: tenter explain {}\n\n", report.rule));
    out
}

/// One line: where, how bad, which rule, what.
pub fn plain_line(report: &Report) -> String {
    format!(
        "{}:{}:{}: {}[{}]: {}",
        safe(&report.at.file),
        report.at.line,
        report.at.column,
        report.level.word(),
        report.rule,
        safe(&report.message)
    )
}

#[derive(Debug)]
struct Shown<'a> {
    report: &'a Report,
    window: Window,
    labels: Vec<LabeledSpan>,
}

impl fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&safe_lines(&self.report.message))
    }
}

impl std::error::Error for Shown<'_> {}

impl Diagnostic for Shown<'_> {
    fn code<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(format!("{}: {}", self.report.level.word(), self.report.rule)))
    }

    fn severity(&self) -> Option<Severity> {
        Some(match self.report.level {
            Level::Error => Severity::Error,
            Level::Warning => Severity::Warning,
            Level::Advice => Severity::Advice,
        })
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        let help = &self.report.help;
        (!help.is_empty()).then(|| Box::new(safe_lines(help).into_owned()) as Box<dyn fmt::Display + 'a>)
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        Some(&self.window)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        Some(Box::new(self.labels.iter().cloned()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check::locate::Stretch;

    #[test]
    fn colour_only_where_it_is_wanted() {
        let file = SourceFile::from_bytes("a.dye".into(), b"recipe A\n  rom 3\n".to_vec());
        let at = Stretch {
            file: "a.dye".into(),
            line: 2,
            column: 3,
            end_line: 2,
            end_column: 6,
            bytes: (11, 14),
            own: true,
        };
        let report = Report {
            rule: "unknown-key",
            level: Level::Error,
            at,
            message: "no key \u{1b}[31m".into(),
            help: "Write `room`.".into(),
            notes: Vec::new(),
            fixes: Vec::new(),
            accepted: None,
            reason: None,
            fingerprint: String::new(),
        };
        let plain = render(&report, &file, Style::Plain);
        assert!(!plain.contains('\u{1b}'), "{plain}");
        assert!(plain.contains("[a.dye:2:3]") && plain.contains("no key \\u{1b}[31m"), "{plain}");
        let coloured = render(&report, &file, Style::Coloured);
        assert!(coloured.contains("\u{1b}[31m"), "{coloured}");
        assert!(!coloured.contains("\u{1b}]8"), "no links: {coloured}");
    }
}
