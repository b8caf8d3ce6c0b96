; Lines of a block stand one step in from its header.
(block) @indent
