-- Run in each Neovim by ../test: what a user sees of the plugin, against the real server. Ends with 0 if all holds.
local failed = 0
local function check(what, holds, seen)
  print((holds and '  ok      ' or '  FAILED  ') .. what .. (holds and '' or ': ' .. vim.inspect(seen)) .. '\n')
  if not holds then
    failed = failed + 1
  end
end
local function line_of(text)
  return vim.fn.search('^\\s*' .. text, 'cnw')
end
local function group(line, column)
  return vim.fn.synIDattr(vim.fn.synID(line, column, 1), 'name')
end
local function at(text, word)
  local line = line_of(text)
  return group(line, vim.fn.getline(line):find(word, 1, true))
end

check('a .dye file is of type dye', vim.bo.filetype == 'dye', vim.bo.filetype)
check('comments begin with #', vim.bo.commentstring == '# %s', vim.bo.commentstring)
vim.cmd('syntax on')

local expected = {
  { 'recipe', 'recipe', 'dyeKind' }, { 'recipe', 'Jollify', 'dyeTitle' }, { 'about', 'about', 'dyeProseKeyRecipe' },
  { 'about', 'nobody', 'dyeProse' }, { 'room', 'room', 'dyeKeyRecipe' }, { 'room', '22', 'dyeNumber' }, { 'room', '°C', 'dyeUnit' },
  { 'squirt', 'squirt', 'dyeVerb' }, { 'squirt', '70', 'dyeNumber' }, { 'squirt', 'mL/piece', 'dyeUnit' }, { 'squirt', 'from', 'dyeClause' },
  { 'soap off', 'off', 'dyeVerb' }, { 'soap off', 'times', 'dyeUnit' }, { 'rinse', 'nearly', 'dyeCondition' }, { 'rinse', 'until', 'dyeClause' },
  { 'colour', '#1d5fa6', 'dyeColour' }, { 'presss', '# finding', 'dyeComment' }, { 'presss', 'presss', '' }, { 'zone', '60', 'dyeNumber' },
  { 'zone', '%', 'dyeUnit' }, { 'steps wash off', 'wash off', 'dyeTitle' }, { 'pieces', 'pieces', 'dyeKeyGoods' },
}
for _, one in ipairs(expected) do
  local seen = at(one[1], one[2])
  check(('%q in %q is %s'):format(one[2], one[1], one[3] == '' and 'plain' or one[3]), seen == one[3], seen)
end
check('a block folds with its lines', vim.fn.foldlevel(line_of('pieces')) == 1 and vim.fn.foldlevel(line_of('goods tees') - 1) == 0,
  { vim.fn.foldlevel(line_of('pieces')), vim.fn.foldlevel(line_of('goods tees') - 1) })

vim.fn.cursor(line_of('goods tees'), 1)
vim.cmd('normal! onote x')
check('a line under a header is set in', vim.fn.getline('.') == '  note x', vim.fn.getline('.'))
vim.cmd('normal! onote y')
check('the next one stands as deep', vim.fn.getline('.') == '  note y', vim.fn.getline('.'))
vim.cmd('silent! undo')
vim.cmd('silent! undo')

local function findings()
  return vim.tbl_map(function(found)
    local lsp = found.user_data and found.user_data.lsp or {}
    return { code = found.code or lsp.code, line = found.lnum + 1, message = found.message }
  end, vim.diagnostic.get(0))
end
vim.wait(10000, function() return #findings() > 0 end, 20)
local wanted = line_of('presss')
local seen = findings()
check('the misspelt verb is found, and nothing else', #seen == 1 and seen[1].code == 'unknown-verb' and seen[1].line == wanted, seen)
if seen[1] then
  print('          ' .. seen[1].message .. '\n')
end

local last = vim.api.nvim_buf_line_count(0)
vim.api.nvim_buf_set_lines(0, last, last, false, { '  soak     tees in soda s' })
vim.api.nvim_win_set_cursor(0, { last + 1, 25 })
vim.wait(500)
local client = (vim.lsp.get_clients or vim.lsp.get_active_clients)()[1]
local place = vim.lsp.util.make_position_params(0, client and client.offset_encoding or 'utf-16')
place.position = { line = last, character = 25 }
local answer = vim.lsp.buf_request_sync(0, 'textDocument/completion', place, 5000) or {}
local labels = {}
for _, one in pairs(answer) do
  for _, item in ipairs(one.result and (one.result.items or one.result) or {}) do
    labels[#labels + 1] = item.label
  end
end
check('`soda s` completes to `soda soak`', vim.tbl_contains(labels, 'soda soak'), labels)
check('the server is the one that was asked for', client and vim.deep_equal(client.config.cmd, vim.g.tenter_cmd), client and client.config.cmd)
vim.cmd(failed == 0 and 'qall!' or 'cquit!')
