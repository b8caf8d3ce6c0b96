-- Run by ../test in a Neovim that has tree-sitter, with the parser built: the colours then come from the queries.
local failed = 0
for _, one in ipairs({
  { 'recipe Jollify', 'Jollify', 'markup.heading' }, { '  squirt   70', 'squirt', 'function' }, { '  squirt   70', '70', 'number' },
  { '  squirt   70', 'mL/piece', 'type' }, { '  squirt   70', 'from', 'keyword.operator' }, { '  about', 'verb', 'string' },
  { '  room', 'room', 'property' }, { '  presss', '# finding', 'comment' },
}) do
  local line = vim.fn.search('^' .. one[1], 'cnw')
  local column = vim.fn.getline(line):find(one[2], 1, true)
  vim.treesitter.get_parser(0, 'dye'):parse()
  local names = vim.tbl_map(function(capture) return capture.capture end, vim.treesitter.get_captures_at_pos(0, line - 1, column - 1))
  local holds = vim.tbl_contains(names, one[3])
  print(('  %s %q is @%s\n'):format(holds and 'ok     ' or 'FAILED ', one[2], one[3]) .. (holds and '' or vim.inspect(names) .. '\n'))
  failed = failed + (holds and 0 or 1)
end
local started = vim.treesitter.highlighter.active[vim.api.nvim_get_current_buf()] ~= nil
print(('  %s tree-sitter colours the file by itself\n'):format(started and 'ok     ' or 'FAILED '))
vim.cmd((failed == 0 and started) and 'qall!' or 'cquit!')
