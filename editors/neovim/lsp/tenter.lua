-- The server, as Neovim 0.11 and later look for it.
return {
  cmd = { 'tenter', 'lsp' },
  filetypes = { 'dye' },
  root_markers = { 'tenter.toml', '.git' },
}
