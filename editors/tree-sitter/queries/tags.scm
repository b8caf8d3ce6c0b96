(block
  (header
    kind: (kind)
    name: (name) @name)) @definition.class
