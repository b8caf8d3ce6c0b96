//! Findings as a log for other tools: SARIF, the Static Analysis Results Interchange Format.
//!
//! Source: *Static Analysis Results Interchange Format (SARIF) Version 2.1.0*, OASIS Standard, 27 March 2020. Clauses
//! are named where they decide something.

use std::collections::BTreeSet;

use serde_json::{Value, json};
use tenter_rules::{Group, Level, rule};

use crate::check::locate::Stretch;
use crate::check::one::Result;
use crate::check::report::{FixReport, Report};
use crate::output::Output;

const SCHEMA: &str = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/// Writes one log with one run. `troubles` is what could not be checked, and why.
pub fn show(results: &[Result], troubles: &[(String, String)], output: &mut Output) {
    output.json(&log(results, troubles));
}

fn log(results: &[Result], troubles: &[(String, String)]) -> Value {
    let reports: Vec<&Report> = results.iter().flat_map(|result| &result.reports).collect();
    let names: Vec<&str> = reports.iter().map(|report| report.rule).collect::<BTreeSet<_>>().into_iter().collect();
    let notifications: Vec<Value> = troubles
        .iter()
        .map(|(name, what)| json!({ "level": "error", "message": { "text": plain(&format!("{name}: {what}")) } }))
        .collect();
    let results: Vec<Value> = reports.iter().map(|report| result(report, &names)).collect();
    json!({
        "$schema": SCHEMA,
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": {
                "name": "tenter",
                "semanticVersion": env!("CARGO_PKG_VERSION"),
                "rules": names.iter().filter_map(|name| descriptor(name)).collect::<Vec<_>>(),
            } },
            // 3.20.14: false when the tool could not look at everything.
            "invocations": [{
                "executionSuccessful": troubles.is_empty(),
                "toolExecutionNotifications": notifications,
            }],
            // 3.14.17: a column is a Unicode code point, as everywhere else here.
            "columnKind": "unicodeCodePoints",
            "results": results,
        }],
    })
}

/// 3.49: a rule and its page.
fn descriptor(name: &str) -> Option<Value> {
    let rule = rule(name)?;
    Some(json!({
        "id": rule.name,
        "shortDescription": { "text": rule.summary },
        "help": { "text": rule.page, "markdown": rule.page },
        "defaultConfiguration": { "level": level(rule.level) },
        "properties": { "tags": [tag(rule.group)] },
    }))
}

fn tag(group: Group) -> String {
    group.title().to_lowercase().replace(' ', "-")
}

/// 3.27.10: advice is a note.
fn level(level: Level) -> &'static str {
    match level {
        Level::Error => "error",
        Level::Warning => "warning",
        Level::Advice => "note",
    }
}

fn result(report: &Report, names: &[&str]) -> Value {
    let said = if report.help.is_empty() {
        plain(&report.message)
    } else {
        plain(&format!("{}\n{}", report.message, report.help))
    };
    let related: Vec<Value> = report
        .notes
        .iter()
        .map(|(at, text)| {
            let mut location = json!({ "message": { "text": plain(text) } });
            if let Some(at) = at {
                location["physicalLocation"] = physical(at);
            }
            location
        })
        .collect();
    let mut result = json!({
        "ruleId": report.rule,
        "level": level(report.level),
        "message": { "text": said },
        "locations": [{ "physicalLocation": physical(&report.at) }],
        "partialFingerprints": { "primaryLocationLineHash": report.fingerprint },
        // 3.27.23: an empty array says that suppressions are kept track of and there is none.
        "suppressions": suppressions(report),
    });
    if let Ok(index) = names.binary_search(&report.rule) {
        result["ruleIndex"] = json!(index);
    }
    if !related.is_empty() {
        result["relatedLocations"] = json!(related);
    }
    if !report.fixes.is_empty() {
        result["fixes"] = report.fixes.iter().map(fix).collect();
    }
    result
}

/// 3.35: an `accept` line stands in the source; the configuration of the collection is outside it.
fn suppressions(report: &Report) -> Value {
    let Some(reason) = &report.reason else { return json!([]) };
    let inside = report.accepted.as_ref().is_none_or(|at| at.file.ends_with(".dye") || at.own);
    let mut suppression = json!({
        "kind": if inside { "inSource" } else { "external" },
        "justification": reason,
    });
    if let Some(at) = &report.accepted {
        suppression["location"] = json!({ "physicalLocation": physical(at) });
    }
    json!([suppression])
}

/// 3.29.
fn physical(at: &Stretch) -> Value {
    json!({ "artifactLocation": { "uri": uri(&at.file) }, "region": region(at) })
}

/// 3.30.5 to 3.30.8: lines and columns from 1, the end column one past the last character.
fn region(at: &Stretch) -> Value {
    json!({
        "startLine": at.line,
        "startColumn": at.column,
        "endLine": at.end_line,
        "endColumn": at.end_column,
    })
}

/// 3.55 to 3.57. All edits of a fix are made together; where they touch several files each has its own change.
fn fix(fix: &FixReport) -> Value {
    let files: BTreeSet<&str> = fix.edits.iter().map(|edit| edit.at.file.as_str()).collect();
    let changes: Vec<Value> = files
        .iter()
        .map(|file| {
            let edits = fix.edits.iter().filter(|edit| edit.at.file == **file);
            let replacements: Vec<Value> = edits
                .map(|edit| json!({ "deletedRegion": region(&edit.at), "insertedContent": { "text": edit.new_text } }))
                .collect();
            json!({ "artifactLocation": { "uri": uri(file) }, "replacements": replacements })
        })
        .collect();
    json!({ "description": { "text": plain(&fix.title) }, "artifactChanges": changes })
}

/// 3.11.5: braces are doubled, for single ones stand for an argument; 3.11.6: `[…](…)` would be a link.
fn plain(text: &str) -> String {
    text.replace('{', "{{").replace('}', "}}").replace("](", "] (")
}

/// 3.4.3: a URI, relative where the file lies below the folder the command was started in (RFC 3986, 2.3: what is
/// unreserved stands for itself, all else is written by its bytes).
fn uri(name: &str) -> String {
    let mut uri = String::with_capacity(name.len());
    if name.starts_with('/') {
        uri.push_str("file://");
    } else if name.as_bytes().get(1) == Some(&b':') {
        uri.push_str("file:///");
    }
    for byte in name.bytes() {
        match byte {
            b'A'..=b'Z' | b'a'..=b'z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' | b'/' => uri.push(char::from(byte)),
            _ => uri.push_str(&format!("%{byte:02X}")),
        }
    }
    uri
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_become_uris() {
        for (name, expected) in [
            ("a/b-1.dye", "a/b-1.dye"),
            ("../a b.dye", "../a%20b.dye"),
            ("50% é.dye", "50%25%20%C3%A9.dye"),
            ("/x/a.dye", "file:///x/a.dye"),
            ("C:/x/a.dye", "file:///C%3A/x/a.dye"),
            ("<stdin>", "%3Cstdin%3E"),
        ] {
            assert_eq!(uri(name), expected);
        }
    }

    #[test]
    fn nothing_in_a_message_is_an_argument_or_a_link() {
        assert_eq!(plain("{0} of [a](1)"), "{{0}} of [a] (1)");
    }
}
