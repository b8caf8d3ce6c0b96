; What the words of a recipe are, under the names Helix has for its themes.

(comment) @comment

(header kind: (kind) @keyword)
(header kind: (unknown_kind) @keyword)
(header name: (name) @markup.heading)

(step verb: (verb) @function)
(property key: (key) @variable.other.member)
(clause connector: (connector) @keyword.operator)

(number) @constant.numeric
(date) @constant.numeric
(malformed_number) @constant.numeric
(unit) @type
(colour) @constant

(prose) @string
(reason) @string
(condition) @string
(quoted) @string
(aside) @comment
(comma) @punctuation.delimiter
