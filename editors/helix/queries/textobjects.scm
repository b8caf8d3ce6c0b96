(block) @class.around
(block (step)+ @class.inside)
(block (property)+ @class.inside)
(block (amount)+ @class.inside)

(step) @function.around
(clause) @parameter.around
(comment)+ @comment.around
