//! Tells Zed where the server is: the setting `lsp.tenter.binary`, else `tenter` on the PATH.

use zed_extension_api::settings::LspSettings;
use zed_extension_api::{self as zed, serde_json, LanguageServerId, Result, Worktree};

struct Dye;

const MISSING: &str = "tenter was not found: no totals and no warnings. Put it on the PATH, or name it in the settings \
                       under lsp, tenter, binary, path.";

impl zed::Extension for Dye {
    fn new() -> Self {
        Self
    }

    fn language_server_command(&mut self, server: &LanguageServerId, worktree: &Worktree) -> Result<zed::Command> {
        let binary = LspSettings::for_worktree(server.as_ref(), worktree).ok().and_then(|settings| settings.binary);
        let (path, arguments) = binary.map_or((None, None), |binary| (binary.path, binary.arguments));
        let command = path.or_else(|| worktree.which("tenter")).ok_or(MISSING)?;
        let args = arguments.unwrap_or_else(|| vec!["lsp".to_owned()]);
        Ok(zed::Command { command, args, env: worktree.shell_env() })
    }

    fn language_server_initialization_options(
        &mut self,
        server: &LanguageServerId,
        worktree: &Worktree,
    ) -> Result<Option<serde_json::Value>> {
        Ok(LspSettings::for_worktree(server.as_ref(), worktree).ok().and_then(|settings| settings.initialization_options))
    }

    fn language_server_workspace_configuration(
        &mut self,
        server: &LanguageServerId,
        worktree: &Worktree,
    ) -> Result<Option<serde_json::Value>> {
        Ok(LspSettings::for_worktree(server.as_ref(), worktree).ok().and_then(|settings| settings.settings))
    }
}

zed::register_extension!(Dye);
