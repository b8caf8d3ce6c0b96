(block
  (header
    kind: (_) @context
    name: (name)? @name)) @item
