" How a dye recipe is edited.
if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal comments=:#
setlocal commentstring=#\ %s
" Nothing wraps by itself but comments: a broken line would be another line.
setlocal formatoptions-=t formatoptions+=croql
" A block is two columns in; a continued line six.
setlocal expandtab shiftwidth=2 softtabstop=2 tabstop=4
setlocal iskeyword+=-
setlocal foldmethod=expr foldexpr=DyeFold(v:lnum) foldlevel=99

" A block folds with the lines under it; blank lines and comments before the next one stay out.
function! DyeFold(line) abort
  let text = getline(a:line)
  if text =~# '^[^[:blank:]#0-9]'
    return '>1'
  endif
  if text =~# '^\s\+\S' && text !~# '^\s*#\%(\s\|$\)'
    return 1
  endif
  let next = nextnonblank(a:line + 1)
  while next > 0 && getline(next) =~# '^\s*#\%(\s\|$\)'
    let next = nextnonblank(next + 1)
  endwhile
  return next > 0 && getline(next) =~# '^[[:blank:]0-9]' ? '=' : 0
endfunction

let b:undo_ftplugin = 'setlocal comments< commentstring< formatoptions< expandtab< shiftwidth< softtabstop< tabstop< iskeyword< foldmethod< foldexpr< foldlevel<'

" With the tree-sitter parser installed, colours come from it.
lua << LUA
if vim.treesitter and vim.treesitter.start then
  pcall(vim.treesitter.start, 0, 'dye')
end
LUA
