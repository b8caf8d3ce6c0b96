; Words for people and remarks may hold links; editors that know a grammar for comments mark them.
((comment) @injection.content
  (#set! injection.language "comment"))
