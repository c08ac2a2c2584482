" Colours for feed files. Put it into the `syntax` folder, and beside it, in `ftdetect`:
"     autocmd BufNewFile,BufRead *.feed setfiletype feed
" A test compares its words with the parser's.
if exists("b:current_syntax")
  finish
endif

syntax match   feedComment   "#.*$" contains=@Spell
syntax match   feedString    +\%(\d\)\@<!"\%(\\.\|[^"\\]\)*"+
syntax match   feedStatement "^\s*\zs\%(design\|set\|change\|include\|band\|sweep\|tune\|require\|plane\|box\|variant\)\>"
syntax match   feedKind      "^\s*\zs\%(source\|load\|resistor\|inductor\|capacitor\|line\|stub\|transformer\|balun\|choke\|coupling\|pad\|twoport\|selector\)\>"
syntax keyword feedPlace     at from to between into across through on in over of
syntax keyword feedWord      with for each frequency step points by ratio most least keeping and below above reference
syntax keyword feedWord      adjustable tolerance normal limit open shorted band
syntax keyword feedFigure    swr return loss resistance reactance mismatch power radiated heat total efficiency
syntax keyword feedFigure    peak volts rms amps width
syntax keyword feedGround    ground
syntax match   feedNumber    "\<j\?\%(\d\+\%(\.\d\+\)\?\|\.\d\+\)\%([eE][+-]\?\d\+\)\?"
syntax match   feedUnit      "\%(\d\s*\)\@<=\%([fpnumkMG]\?\%(F\|H\|ohm\|S\|V\|A\|W\|Hz\|T\|s\|m\)\|cm\|ft\|in\|dBm\|deg\|turns\|dB\%(/\d*\%(m\|ft\)\)\?\|pF/\%(m\|ft\)\|W/m\)\>"
syntax match   feedUnit      "%"

highlight default link feedComment   Comment
highlight default link feedString    String
highlight default link feedStatement Statement
highlight default link feedKind      Type
highlight default link feedPlace     Operator
highlight default link feedWord      Keyword
highlight default link feedFigure    Function
highlight default link feedGround    Constant
highlight default link feedNumber    Number
highlight default link feedUnit      Special

let b:current_syntax = "feed"
