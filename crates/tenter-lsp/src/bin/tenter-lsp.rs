//! The server by itself, for tests and for editors that want no command around it.

use std::process::ExitCode;

fn main() -> ExitCode {
    match tenter_lsp::runtime() {
        Ok(runtime) => {
            let code = runtime.block_on(tenter_lsp::serve_stdio());
            runtime.shutdown_background();
            ExitCode::from(u8::try_from(code).unwrap_or(1))
        }
        Err(_) => ExitCode::from(2),
    }
}
