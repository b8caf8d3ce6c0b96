; Each recipe is a world of its own, but blocks are not nested in it: the file is the scope.
(source_file) @local.scope
(header name: (name) @local.definition)
(words) @local.reference
