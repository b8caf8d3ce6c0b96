//! What may be written after `tenter`.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

/// Checks, totals and formats textile dye recipes written as .dye files.
#[derive(Debug, Parser)]
#[command(name = "tenter", version, max_term_width = 80, after_help = AFTER)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub verb: Verb,
}

const AFTER: &str = "\
Exit status: 0 nothing at error level, 1 findings at error level, 2 could not run.
Work to be done by hand comes with the usual cautions; nothing here certifies
that anything is safe.";

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
    Lsp,
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
    pub format: Form,
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
