" A line stands as deep as the one above it; under a header, one step in; after a blank line, at the left edge.
if exists('b:did_indent')
  finish
endif
let b:did_indent = 1
setlocal indentexpr=DyeIndent(v:lnum) indentkeys=!^F,o,O
let b:undo_indent = 'setlocal indentexpr< indentkeys<'

function! DyeIndent(line) abort
  if a:line == 1 || getline(a:line - 1) =~# '^\s*$'
    return 0
  endif
  let above = getline(a:line - 1)
  if above =~? '^\%(recipe\|goods\|dye\|chemical\|material\|mix\|layout\|vessel\|steps\?\|variant\|log\|shelf\)\%(\s\|$\)'
    return shiftwidth()
  endif
  return indent(a:line - 1)
endfunction
