autocmd BufRead,BufNewFile *.dye setfiletype dye
