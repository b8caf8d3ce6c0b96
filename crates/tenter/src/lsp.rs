//! `tenter lsp`: the language server on standard input and output.

use std::process::ExitCode;

/// Serves until the editor is done; ends with the status the protocol asks for.
pub fn run() -> ExitCode {
    let Ok(runtime) = tenter_lsp::runtime() else {
        return ExitCode::from(2);
    };
    let code = runtime.block_on(tenter_lsp::serve_stdio());
    runtime.shutdown_background();
    ExitCode::from(u8::try_from(code).unwrap_or(1))
}
