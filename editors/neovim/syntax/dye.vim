" Colours of a dye recipe, for when neither tree-sitter nor the server give them.
if exists('b:current_syntax')
  finish
endif
let s:cpo = &cpo
set cpo&vim

let s:blocks = {}
" words: begin (written by editors/words.mjs)
let s:blocks['edition'] = {'words': 'edition', 'keys': '', 'prose': ''}
let s:blocks['use'] = {'words': 'use', 'keys': 'accept', 'prose': 'notes\|note'}
let s:blocks['recipe'] = {'words': 'recipe', 'keys': 'water\s\+hardness\|altitude\|currency\|hardness\|measures\|accept\|depth\|shade\|room', 'prose': 'licence\|license\|version\|source\|about\|notes\|note\|for\|by'}
let s:blocks['goods'] = {'words': 'goods', 'keys': 'accept\|colour\|fibers\|fibres\|pieces\|thread\|weight\|color\|fiber\|fibre\|piece\|price\|state\|area\|trim', 'prose': 'source\|notes\|note'}
let s:blocks['dye'] = {'words': 'dye', 'keys': 'bulk\s\+density\|solubility\|strength\|density\|hazards\|accept\|colour\|hazard\|purity\|class\|color\|index\|price\|state\|form\|is', 'prose': 'source\|notes\|note'}
let s:blocks['chemical'] = {'words': 'chemical\|material', 'keys': 'bulk\s\+density\|solubility\|strength\|density\|formula\|hazards\|accept\|hazard\|purity\|price\|state\|form\|role\|is', 'prose': 'source\|notes\|note'}
let s:blocks['mix'] = {'words': 'mix', 'keys': 'fill\s\+up\|make\s\+up\|accept\|top\s\+up\|fixed\|price\|keep\|rest\|stir', 'prose': 'notes\|note'}
let s:blocks['layout'] = {'words': 'layout', 'keys': 'accept\|beside\|layers\|folds\|front\|back\|zone', 'prose': 'notes\|note'}
let s:blocks['vessel'] = {'words': 'vessel', 'keys': 'material\|accept\|closed\|holds\|rated\|food', 'prose': 'notes\|note'}
let s:blocks['steps'] = {'words': 'steps\|step', 'keys': 'accept', 'prose': 'about\|notes\|note'}
let s:blocks['variant'] = {'words': 'variant', 'keys': 'water\s\+hardness\|bulk\s\+density\|solubility\|altitude\|currency\|hardness\|material\|measures\|strength\|changed\|density\|fill\s\+up\|formula\|hazards\|licence\|license\|version\|weighed\|accept\|beside\|closed\|colour\|fibers\|fibres\|hazard\|layers\|pieces\|purity\|rating\|source\|thread\|weight\|class\|color\|depth\|fiber\|fibre\|fixed\|folds\|found\|front\|holds\|index\|photo\|piece\|price\|rated\|shade\|state\|area\|back\|food\|form\|made\|role\|room\|took\|trim\|zone\|for\|by\|in\|is', 'prose': 'about\|notes\|note'}
let s:blocks['log'] = {'words': 'log', 'keys': 'weighed\|accept\|rating\|made\|room\|took', 'prose': 'changed\|found\|notes\|photo\|note'}
let s:blocks['shelf'] = {'words': 'shelf', 'keys': 'currency\|accept', 'prose': 'notes\|note'}
let s:verbs = 'squeeze\s\+out\|dispose\s\+of\|neutralise\|neutralize\|discharge\|microwave\|wring\s\+out\|dissolve\|drip\s\+dry\|irrigate\|soap\s\+off\|spin\s\+out\|sprinkle\|submerge\|agitate\|crumple\|discard\|dispose\|immerse\|make\s\+up\|measure\|prepare\|scatter\|scrunch\|squeeze\|uncover\|wet\s\+out\|wet-out\|bleach\|prewet\|put\s\+on\|repeat\|simmer\|soften\|squirt\|top\s\+up\|unbind\|unfold\|unwrap\|batch\|brush\|check\|cover\|drain\|leave\|lower\|paint\|paste\|pleat\|press\|print\|raise\|rinse\|scour\|sieve\|spray\|stamp\|stand\|steam\|steep\|store\|strew\|strip\|untie\|weigh\|wring\|bind\|boil\|cool\|cure\|drip\|flip\|fold\|heap\|heat\|hold\|iron\|keep\|lift\|make\|mark\|mist\|move\|open\|pile\|pour\|rest\|sift\|soak\|soap\|sour\|spin\|stir\|test\|turn\|wait\|warm\|wash\|wear\|wrap\|add\|dip\|dry\|dye\|mix\|tie\|wet'
let s:connectors = 'because\|through\|without\|before\|bought\|after\|every\|under\|until\|from\|into\|onto\|over\|with\|and\|for\|as\|at\|by\|in\|on\|to'
let s:units = 'australian\s\+tablespoons\|australian\s\+tablespoon\|imperial\s\+fluid\s\+ounces\|imperial\s\+fluid\s\+ounce\|degrees\s\+centigrade\|degrees\s\+fahrenheit\|metric\s\+tablespoons\|square\s\+centimeters\|square\s\+centimetres\|degree\s\+fahrenheit\|grains\s\+per\s\+gallon\|metric\s\+tablespoon\|square\s\+centimeter\|square\s\+centimetre\|imperial\s\+gallons\|metric\s\+teaspoons\|australian\s\+cups\|australian\s\+tbsp\|degrees\s\+celsius\|imperial\s\+gallon\|imperial\s\+quarts\|metric\s\+teaspoon\|us\s\+fluid\s\+ounces\|australian\s\+cup\|deg\s\+fahrenheit\|degree\s\+celsius\|imperial\s\+fl\s\+oz\|imperial\s\+pints\|imperial\s\+quart\|us\s\+fluid\s\+ounce\|us\s\+tablespoons\|degrees\s\+clark\|imperial\s\+cups\|imperial\s\+pint\|mg\/l\s\+as\s\+caco3\|mg\/l\s\+hardness\|square\s\+inches\|square\s\+meters\|square\s\+metres\|us\s\+tablespoon\|cubic\s\+meters\|cubic\s\+metres\|fluid\s\+ounces\|imperial\s\+cup\|imperial\s\+gal\|ppm\s\+as\s\+caco3\|ppm\s\+hardness\|square\s\+meter\|square\s\+metre\|square\s\+yards\|us\s\+teaspoons\|centiliters\|centilitres\|centimeters\|centimetres\|cubic\s\+meter\|cubic\s\+metre\|deg\s\+celsius\|fluid\s\+ounce\|imperial\s\+qt\|kilogrammes\|metric\s\+cups\|metric\s\+tbsp\|microliters\|microlitres\|milliliters\|millilitres\|millimeters\|millimetres\|percent\s\+owg\|percent\s\+v\/v\|percent\s\+w\/v\|percent\s\+w\/w\|square\s\+feet\|square\s\+foot\|square\s\+inch\|square\s\+yard\|tablespoons\|us\s\+teaspoon\|%\s\+of\s\+goods\|centigrade\|centiliter\|centilitre\|centimeter\|centimetre\|deciliters\|decilitres\|fahrenheit\|grains\/gal\|kilogramme\|metric\s\+cup\|metric\s\+tsp\|mg\s\+caco3\/l\|mg\/l\s\+caco3\|micrograms\|microliter\|microlitre\|milligrams\|milliliter\|millilitre\|millimeter\|millimetre\|millimolar\|millimoles\|tablespoon\|uk\s\+gallons\|us\s\+gallons\|deciliter\|decilitre\|deg\s\+clark\|degrees\s\+c\|degrees\s\+f\|grain\/gal\|imp\s\+fl\s\+oz\|imp\s\+pints\|kilograms\|microgram\|milligram\|millimole\|per\s\+mille\|ppm\s\+caco3\|sq\s\+inches\|teaspoons\|uk\s\+gallon\|uk\s\+quarts\|us\s\+gallon\|us\s\+quarts\|degree\s\+c\|degree\s\+f\|fluid\s\+oz\|imp\s\+cups\|imp\s\+pint\|kilogram\|per\s\+cent\|permille\|teaspoon\|uk\s\+fl\s\+oz\|uk\s\+pints\|uk\s\+quart\|us\s\+fl\s\+oz\|us\s\+pints\|us\s\+quart\|%\s\+o\.w\.f\|%\s\+o\.w\.g\|celsius\|degrees\|gallons\|grammes\|imp\s\+cup\|imp\s\+gal\|kelvins\|minutes\|percent\|seconds\|sq\s\+inch\|uk\s\+cups\|uk\s\+pint\|uk\s\+tbsp\|us\s\+cups\|us\s\+pint\|us\s\+tbsp\|deg\s\+dh\|deg\s\+fh\|degree\|dry\s\+oz\|gallon\|gr\/gal\|grains\|gramme\|imp\s\+qt\|inches\|kelvin\|liters\|litres\|meters\|metres\|minute\|months\|ounces\|pieces\|pounds\|quarts\|second\|tonnes\|uk\s\+cup\|uk\s\+gal\|uk\s\+tsp\|us\s\+cup\|us\s\+gal\|us\s\+qts\|us\s\+tsp\|°clark\|%\s\+m\/m\|%\s\+m\/v\|%\s\+owf\|%\s\+owg\|%\s\+v\/v\|%\s\+w\/v\|%\s\+w\/w\|%\s\+wog\|clark\|deg\s\+c\|deg\s\+f\|dozen\|drops\|fl\s\+oz\|grain\|grams\|hours\|kilos\|liter\|litre\|meter\|metre\|molar\|moles\|month\|ounce\|oz\s\+wt\|parts\|piece\|pints\|pound\|quart\|sq\s\+cm\|sq\s\+ft\|sq\s\+in\|sq\s\+yd\|tblsp\|tbsps\|times\|tonne\|us\s\+pt\|us\s\+qt\|weeks\|yards\|%m\/m\|%m\/v\|%owf\|%owg\|%v\/v\|%w\/v\|%w\/w\|cups\|days\|degc\|degf\|drop\|feet\|floz\|foot\|gals\|gram\|hour\|inch\|kilo\|ltrs\|mins\|mmol\|mole\|mols\|part\|pint\|secs\|sq\s\+m\|tbsp\|time\|tons\|tsps\|week\|yard\|°\s\+dh\|°\s\+fh\|cm2\|cm3\|cms\|cup\|day\|deg\|ft2\|gal\|gms\|gpg\|gsm\|hrs\|kgs\|lbs\|ltr\|mcg\|min\|mls\|mms\|mol\|ozs\|pcs\|pct\|ppm\|pts\|qts\|sec\|sqm\|tbs\|ton\|tsp\|wks\|yd2\|yds\|°\s\+c\|°\s\+f\|°dh\|°fh\|cc\|cl\|cm\|dh\|dl\|fh\|ft\|gm\|gr\|hr\|kg\|lb\|m2\|m3\|mg\|ml\|mm\|oz\|pc\|pt\|qt\|ug\|ul\|wk\|yd\|°c\|°e\|°f\|%\|c\|d\|f\|g\|h\|k\|l\|m\|s\|t\|x\|°\|×\|‰'
" words: end

" Lines that continue another stand four columns deeper; heads are looked for up to five only.
let s:head = '^\%(\s\{1,5}\|\t\)\zs\c\%('
let s:head_end = '\)\ze\%([[:blank:],]\|$\)'
let s:comment = '#\%(\s\|$\)'

let s:fraction = '[¼-¾⅐-⅞]'
let s:value = '[-−]\?\%(\d\+\%(\.\d\+\|[/⁄]\d\+\|\s*' . s:fraction . '\|\s\+\d\+[/⁄]\d\+\)\?\|' . s:fraction . '\|\.\d\+\)'
let s:qualifier = '\%(\%(about\|around\|roughly\|approximately\|at\s\+least\|at\s\+most\)\s\+\|[~≈≥≤]\s*\)\?'
execute 'syntax match dyeNumber contained /\c\%(\w\|[.°]\)\@<!' . escape(s:qualifier . s:value . '\%(\s*[-–—−:±]\s*' . s:value . '\)*', '/') . '/ nextgroup=dyeUnit skipwhite'
execute 'syntax match dyeUnit contained /\c\%(' . s:units . '\)\%(\/\k\+\|\s\+per\s\+\a\+\)\?\%(\k\|[°%/]\)\@!/'
execute 'syntax match dyeClause contained /\c\<\%(\%(at\s\+\%(least\|most\)\)\@!\%(' . s:connectors . '\)\)\>/'
syntax match dyeCondition contained /\c\%(\<until\s\+\)\@<=[^,[:blank:]0-9][^,]\{-}\ze\%(,\|\s\+\%(in\|into\|at\|for\|over\|by\|every\|to\|with\)\s\+[0-9]\|\s#\%(\s\|$\)\|$\)/
syntax match dyeReason contained /\c\%(\<because\s\+\)\@<=\S.\{-}\ze\%(\s\+#\%(\s\|$\)\|\s*$\)/
syntax match dyeQuoted contained /["“”„][^"“”„]*["“”„]\?/
syntax match dyeAside contained /([^)]*)\?/
syntax match dyeColour contained /#\x\{6}\>/
syntax match dyeProse contained /\S.\{-}\ze\%(\s\+#\%(\s\|$\)\|\s*$\)/
syntax cluster dyeLine contains=dyeNumber,dyeClause,dyeCondition,dyeReason,dyeQuoted,dyeAside,dyeColour,dyeComment

for [s:name, s:block] in items(s:blocks)
  let s:group = toupper(s:name[0]) . s:name[1:]
  let s:inside = '@dyeLine,dyeTitle'
  if s:block.keys !=# ''
    execute 'syntax match dyeKey' . s:group . ' contained /' . s:head . s:block.keys . s:head_end . '/'
    execute 'highlight default link dyeKey' . s:group . ' dyeKey'
    let s:inside .= ',dyeKey' . s:group
  endif
  if s:name ==# 'steps' || s:name ==# 'variant'
    let s:inside .= ',dyeVerb'
  endif
  if s:block.prose !=# ''
    execute 'syntax match dyeProseKey' . s:group . ' contained /' . s:head . s:block.prose . s:head_end . '/ nextgroup=dyeProse skipwhite'
    execute 'highlight default link dyeProseKey' . s:group . ' dyeKey'
    let s:inside .= ',dyeProseKey' . s:group
  endif
  execute 'syntax region dyeBlock' . s:group . ' transparent fold matchgroup=dyeKind'
        \ . ' start=/^\c\%(' . s:block.words . '\)\%(\s\|$\)\@=/ matchgroup=NONE end=/^\ze[^[:blank:]#0-9]/ contains=' . s:inside
endfor
execute 'syntax match dyeVerb contained /' . s:head . s:verbs . s:head_end . '/'

" The name behind the word that opens a block; a `use` line has names and a file.
syntax match dyeTitle contained /\%(^\a\+\s\+\)\@<=[^[:blank:]#].\{-}\ze\%(\s\+#\%(\s\|$\)\|\s\+from\s\+["“„]\|\s*$\)/ contains=dyeQuoted
execute 'syntax match dyeComment /\%(^\|[[:blank:],;)"“”]\)\@<=' . s:comment . '\@=.*/'

highlight default link dyeKind Keyword
highlight default link dyeTitle Title
highlight default link dyeVerb Function
highlight default link dyeKey Identifier
highlight default link dyeClause Operator
highlight default link dyeNumber Number
highlight default link dyeUnit Type
highlight default link dyeColour Constant
highlight default link dyeProse String
highlight default link dyeReason String
highlight default link dyeCondition String
highlight default link dyeQuoted String
highlight default link dyeAside Comment
highlight default link dyeComment Comment

syntax sync fromstart
let b:current_syntax = 'dye'
let &cpo = s:cpo
unlet s:cpo
