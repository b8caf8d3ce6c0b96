//! What may be written after `tenter`.

use std::path::PathBuf;
use std::sync::LazyLock;

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

/// Checks, totals and formats textile dye recipes written as .dye files.
#[derive(Debug, Parser)]
#[command(
    name = "tenter",
    version,
    long_version = LONG_VERSION.as_str(),
    max_term_width = 80,
    after_help = AFTER.as_str()
)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub verb: Verb,
}

/// What the exit status says.
pub const STATUS: [(u8, &str); 3] =
    [(0, "nothing at error level"), (1, "findings at error level"), (2, "something could not be run")];

/// Said wherever the command explains itself.
pub const CAUTION: &str =
    "Work to be done by hand comes with the usual cautions; nothing here certifies that anything is safe.";

/// The edition of the notation beneath the version: a recipe is written in the one, the command has the other.
static LONG_VERSION: LazyLock<String> = LazyLock::new(|| {
    let editions = tenter_resolve::EDITIONS;
    let s = if editions.len() == 1 { "" } else { "s" };
    format!("{}\nedition{s} {} of the notation", env!("CARGO_PKG_VERSION"), editions.join(", "))
});

static AFTER: LazyLock<String> = LazyLock::new(|| {
    let lines: Vec<String> = STATUS.iter().map(|(status, what)| format!("  {status}  {what}\n")).collect();
    format!("Exit status:\n{}\n{CAUTION}", lines.concat())
});

/// The subcommands.
#[derive(Debug, Subcommand)]
pub enum Verb {
    /// Looks through recipes for what arithmetic and chemistry can see going wrong.
    Check(Check),
    /// Amounts to weigh, pour and pay, with their spread.
    Totals(Totals),
    /// Carries a recipe out on paper: how everything stands after each step.
    Rehearse(Rehearse),
    /// One bath or bottle reckoned: volume, pH, what dissolves, cautions.
    Bath(Bath),
    /// Sets recipes out in the usual form; never changes what they mean.
    Fmt(Fmt),
    /// What is known of a material, a dye, a fibre or a dye class, and from where.
    Materials(Materials),
    /// A rule's page, or where every number on a line of a recipe comes from.
    Explain(Explain),
    /// Writes a commented first recipe to start from.
    New(New),
    /// The language server, for editors: speaks over standard input and output.
    Lsp {
        /// Said by editors that leave it open how to speak; there is no other way here.
        #[arg(long, hide = true)]
        stdio: bool,
    },
    /// Completions for a shell, to be put where it looks for them.
    Completions(Completions),
    /// The manual, for `man`: the page of the command or of one of its verbs.
    Man(Man),
}

/// `tenter check`
#[derive(Debug, Args)]
pub struct Check {
    /// Files, or folders to look through; here if none is given. `-` checks standard input.
    pub paths: Vec<PathBuf>,
    /// How to show what is found.
    #[arg(long, value_enum, default_value = "text")]
    pub format: CheckFormat,
    /// The mildest level to show.
    #[arg(long, value_enum, default_value = "advice")]
    pub level: LevelWanted,
    /// Check the recipes as they are when scaled to so many pieces in all.
    #[arg(long, value_name = "N", conflicts_with_all = ["fix", "diff"])]
    pub pieces: Option<f64>,
    /// Exit with 1 when there are more warnings than this.
    #[arg(long, value_name = "N")]
    pub max_warnings: Option<usize>,
    /// Exit with 0 whatever is found; still with 2 when something could not be run.
    #[arg(long)]
    pub exit_zero: bool,
    /// Show what the recipes accept too.
    #[arg(long)]
    pub accepted: bool,
    /// Check standard input under this file name.
    #[arg(long, value_name = "FILE")]
    pub stdin_filename: Option<PathBuf>,
    /// Make the fixes that are certain; standard input comes back fixed on standard output.
    #[arg(long)]
    pub fix: bool,
    /// With --fix or --diff: make the fixes that are only likely too.
    #[arg(long)]
    pub suggested: bool,
    /// Change nothing; show what --fix would change, and exit with 1 if there is anything.
    #[arg(long, conflicts_with = "format")]
    pub diff: bool,
    /// Read this configuration instead of each collection's own tenter.toml.
    #[arg(long, value_name = "FILE", conflicts_with = "isolated")]
    pub config: Option<PathBuf>,
    /// Read no configuration.
    #[arg(long)]
    pub isolated: bool,
}

/// Forms of what is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum CheckFormat {
    /// Reports for people.
    Text,
    /// One JSON array; see spec/check.schema.json.
    Json,
    /// Annotations for GitHub's build log.
    Github,
    /// A SARIF 2.1.0 log, with what the recipes accept.
    Sarif,
}

/// Levels that can be asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LevelWanted {
    /// Errors only.
    Error,
    /// Errors and warnings.
    Warning,
    /// Everything.
    Advice,
}

/// `tenter explain`
#[derive(Debug, Args)]
pub struct Explain {
    /// A rule, or a line of a file as FILE:LINE; none lists all rules.
    #[arg(value_name = "RULE or FILE:LINE", allow_hyphen_values = true)]
    pub what: Option<String>,
    /// Only in this recipe or variant of the file.
    #[arg(long, value_name = "NAME")]
    pub recipe: Option<String>,
    /// Read standard input under this file name: its line is asked for as -:LINE.
    #[arg(long, value_name = "FILE")]
    pub stdin_filename: Option<PathBuf>,
}

/// `tenter totals`
#[derive(Debug, Args)]
pub struct Totals {
    /// Which recipes.
    #[command(flatten)]
    pub of: Chosen,
    /// How to show them.
    #[arg(long, value_enum, default_value = "text")]
    pub format: TotalsForm,
}

/// Forms of the totals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum TotalsForm {
    /// For people.
    Text,
    /// For programs; see the schemas in spec/.
    Json,
    /// For git to compare: the file's text, then one fact a line; never fails.
    Diff,
}

/// `tenter rehearse`
#[derive(Debug, Args)]
pub struct Rehearse {
    /// Which recipes.
    #[command(flatten)]
    pub of: Chosen,
    /// How to show it.
    #[arg(long, value_enum, default_value = "text")]
    pub format: Form,
}

/// `tenter bath`
#[derive(Debug, Args)]
pub struct Bath {
    /// What goes in, as in a mix: "8 L water at 40 °C, 60 g/L soda ash".
    #[arg(required = true, value_name = "AMOUNTS")]
    pub amounts: Vec<String>,
    /// How to show it.
    #[arg(long, value_enum, default_value = "text")]
    pub format: Form,
}

/// Recipes of a file.
#[derive(Debug, Args)]
pub struct Chosen {
    /// The recipe file; `-` reads standard input.
    pub file: PathBuf,
    /// Scale to so many pieces in all.
    #[arg(long, value_name = "N")]
    pub pieces: Option<f64>,
    /// Only this recipe or variant of the file.
    #[arg(long, value_name = "NAME")]
    pub recipe: Option<String>,
    /// Read standard input under this file name.
    #[arg(long, value_name = "FILE")]
    pub stdin_filename: Option<PathBuf>,
}

/// Forms of what is worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Form {
    /// For people.
    Text,
    /// For programs; see the schemas in spec/.
    Json,
}

/// `tenter fmt`
#[derive(Debug, Args)]
pub struct Fmt {
    /// Files or folders; `-` formats standard input to standard output.
    #[arg(default_value = ".")]
    pub paths: Vec<PathBuf>,
    /// Change nothing; say which files would change, and exit with 1 if any would.
    #[arg(long)]
    pub check: bool,
    /// Change nothing; show the changes, and exit with 1 if there are any.
    #[arg(long)]
    pub diff: bool,
    /// Format standard input under this file name.
    #[arg(long, value_name = "FILE")]
    pub stdin_filename: Option<PathBuf>,
}

/// `tenter materials`
#[derive(Debug, Args)]
pub struct Materials {
    /// A name, in any of its spellings; none lists everything.
    pub name: Vec<String>,
}

/// `tenter new`
#[derive(Debug, Args)]
pub struct New {
    /// The file to write; nothing that exists is ever overwritten.
    #[arg(default_value = "first-recipe.dye")]
    pub file: PathBuf,
}

/// `tenter completions`
#[derive(Debug, Args)]
pub struct Completions {
    /// Which shell.
    #[arg(value_enum)]
    pub shell: Shell,
}

/// `tenter man`
#[derive(Debug, Args)]
pub struct Man {
    /// The page of this verb; the command's own if none is given.
    pub verb: Option<String>,
    /// Write all pages into this folder instead.
    #[arg(long, value_name = "FOLDER", conflicts_with = "verb")]
    pub into: Option<PathBuf>,
}
