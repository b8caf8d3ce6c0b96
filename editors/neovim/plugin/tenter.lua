-- Starts the server for .dye files. Before 0.11 there is no folder of servers, so it is started when such a file opens.
-- `vim.g.tenter_cmd` may name another command; `vim.g.tenter_start = false` leaves it all to you.
if vim.g.loaded_tenter then
  return
end
vim.g.loaded_tenter = true

local function command()
  return vim.g.tenter_cmd or { 'tenter', 'lsp' }
end

local function start(buffer)
  if vim.g.tenter_start == false then
    return
  end
  local cmd = command()
  if vim.fn.executable(cmd[1]) == 0 then
    vim.notify_once(cmd[1] .. ' was not found: no totals and no warnings. Put it on the PATH or set vim.g.tenter_cmd.', vim.log.levels.WARN)
    return
  end
  local file = vim.api.nvim_buf_get_name(buffer)
  local folder = vim.fn.fnamemodify(file ~= '' and file or vim.fn.getcwd() .. '/x', ':p:h')
  local found = vim.fn.findfile('tenter.toml', folder .. ';')
  local git = vim.fn.finddir('.git', folder .. ';')
  local root = (found ~= '' and vim.fn.fnamemodify(found, ':p:h')) or (git ~= '' and vim.fn.fnamemodify(git, ':p:h:h')) or folder
  local config = { name = 'tenter', cmd = cmd, root_dir = root }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
    return
  end
  -- 0.7: one client for each root, kept by hand.
  _G.tenter_clients = _G.tenter_clients or {}
  local client = _G.tenter_clients[root]
  if not client or not vim.lsp.get_client_by_id(client) then
    client = vim.lsp.start_client(config)
    _G.tenter_clients[root] = client
  end
  if client then
    vim.lsp.buf_attach_client(buffer, client)
    vim.api.nvim_buf_set_option(buffer, 'omnifunc', 'v:lua.vim.lsp.omnifunc')
  end
end

if vim.lsp.config and vim.lsp.enable then
  -- The rest is in lsp/tenter.lua, and in what you say with vim.lsp.config.
  if vim.g.tenter_cmd then
    vim.lsp.config('tenter', { cmd = vim.g.tenter_cmd })
  end
  if vim.g.tenter_start ~= false then
    vim.lsp.enable('tenter')
  end
else
  vim.api.nvim_create_autocmd('FileType', {
    pattern = 'dye',
    callback = function(event)
      start(event.buf)
    end,
  })
end
