; What the words of a recipe are. The names are those the server gives its semantic tokens, so that a file keeps its colours
; when the server comes in.

(comment) @comment

(header kind: (kind) @keyword)
(header kind: (unknown_kind) @keyword)
(header name: (name) @title)

(step verb: (verb) @function)
(property key: (key) @property)
(clause connector: (connector) @operator)

(number) @number
(date) @number
(malformed_number) @number
(unit) @type
(colour) @constant

(prose) @string
(reason) @string
(condition) @string
(quoted) @string
(aside) @comment
(comma) @punctuation.delimiter
