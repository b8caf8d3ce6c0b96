;;; tenter-mode.el --- Major mode for textile dye recipes -*- lexical-binding: t; -*-

;; Author: The Tenter authors
;; Version: 0.1.0
;; Package-Requires: ((emacs "27.1"))
;; Keywords: languages, tools
;; URL: https://example.org/tenter
;; SPDX-License-Identifier: MIT OR Apache-2.0

;; This program is free software.  You may use it under either of the
;; MIT licence or the Apache License, version 2.0, whichever suits you.

;;; Commentary:

;; A dye recipe is a plain text file whose name ends in `.dye'.  This mode
;; colours it, indents it, comments in it and lists its blocks.  Totals and
;; warnings come from the server `tenter lsp' through Eglot: type
;; `M-x eglot' in such a file, or put this into your init file:
;;
;;     (add-hook 'tenter-mode-hook #'eglot-ensure)

;;; Code:

(require 'rx)

(defgroup tenter nil
  "Textile dye recipes."
  :group 'languages
  :prefix "tenter-")

(defcustom tenter-server-command '("tenter" "lsp")
  "The command that starts the server, a list of words."
  :type '(repeat string))

(defcustom tenter-indent-offset 2
  "How many columns the lines of a block are set in."
  :type 'natnum
  :safe #'natnump)

;; words: begin (written by editors/words.mjs)
(defconst tenter-mode--blocks
  '(("edition"
     :words ("edition")
     :keys ()
     :prose ())
    ("use"
     :words ("use")
     :keys ("accept")
     :prose ("notes" "note"))
    ("recipe"
     :words ("recipe")
     :keys ("water hardness" "altitude" "currency" "hardness" "measures" "accept" "depth" "shade" "room")
     :prose ("licence" "license" "version" "source" "about" "notes" "note" "for" "by"))
    ("goods"
     :words ("goods")
     :keys ("accept" "colour" "fibers" "fibres" "pieces" "thread" "weight" "color" "fiber" "fibre" "piece"
     "price" "state" "area" "trim")
     :prose ("source" "notes" "note"))
    ("dye"
     :words ("dye")
     :keys ("bulk density" "solubility" "strength" "density" "hazards" "accept" "colour" "hazard" "purity"
     "class" "color" "index" "price" "state" "form" "is")
     :prose ("source" "notes" "note"))
    ("chemical"
     :words ("chemical" "material")
     :keys ("bulk density" "solubility" "strength" "density" "formula" "hazards" "accept" "hazard" "purity"
     "price" "state" "form" "role" "is")
     :prose ("source" "notes" "note"))
    ("mix"
     :words ("mix")
     :keys ("fill up" "make up" "accept" "top up" "fixed" "price" "keep" "rest" "stir")
     :prose ("notes" "note"))
    ("layout"
     :words ("layout")
     :keys ("accept" "beside" "layers" "folds" "front" "back" "zone")
     :prose ("notes" "note"))
    ("vessel"
     :words ("vessel")
     :keys ("material" "accept" "closed" "holds" "rated" "food")
     :prose ("notes" "note"))
    ("steps"
     :words ("steps" "step")
     :keys ("accept")
     :prose ("about" "notes" "note"))
    ("variant"
     :words ("variant")
     :keys ("water hardness" "bulk density" "solubility" "altitude" "currency" "hardness" "material" "measures"
     "strength" "changed" "density" "fill up" "formula" "hazards" "licence" "license" "version" "weighed"
     "accept" "beside" "closed" "colour" "fibers" "fibres" "hazard" "layers" "pieces" "purity" "rating"
     "source" "thread" "weight" "class" "color" "depth" "fiber" "fibre" "fixed" "folds" "found" "front"
     "holds" "index" "photo" "piece" "price" "rated" "shade" "state" "area" "back" "food" "form" "made"
     "role" "room" "took" "trim" "zone" "for" "by" "in" "is")
     :prose ("about" "notes" "note"))
    ("log"
     :words ("log")
     :keys ("weighed" "accept" "rating" "made" "room" "took")
     :prose ("changed" "found" "notes" "photo" "note"))
    ("shelf"
     :words ("shelf")
     :keys ("currency" "accept")
     :prose ("notes" "note")))
  "What opens a block, and what opens a line in it, for each kind of block.")

(defconst tenter-mode--verbs
  '("squeeze out" "dispose of" "neutralise" "neutralize" "discharge" "microwave" "wring out" "dissolve"
    "drip dry" "irrigate" "soap off" "spin out" "sprinkle" "submerge" "agitate" "crumple" "discard"
    "dispose" "immerse" "make up" "measure" "prepare" "scatter" "scrunch" "squeeze" "uncover" "wet out"
    "wet-out" "bleach" "prewet" "put on" "repeat" "simmer" "soften" "squirt" "top up" "unbind" "unfold"
    "unwrap" "batch" "brush" "check" "cover" "drain" "leave" "lower" "paint" "paste" "pleat" "press"
    "print" "raise" "rinse" "scour" "sieve" "spray" "stamp" "stand" "steam" "steep" "store" "strew"
    "strip" "untie" "weigh" "wring" "bind" "boil" "cool" "cure" "drip" "flip" "fold" "heap" "heat"
    "hold" "iron" "keep" "lift" "make" "mark" "mist" "move" "open" "pile" "pour" "rest" "sift" "soak"
    "soap" "sour" "spin" "stir" "test" "turn" "wait" "warm" "wash" "wear" "wrap" "add" "dip" "dry" "dye"
    "mix" "tie" "wet")
  "The verbs of the trade, which open a step.")

(defconst tenter-mode--connectors
  '("because" "through" "without" "before" "bought" "after" "every" "under" "until" "from" "into"
    "onto" "over" "with" "and" "for" "as" "at" "by" "in" "on" "to")
  "The words that open a clause.")

(defconst tenter-mode--units
  '("australian tablespoons" "australian tablespoon" "imperial fluid ounces" "imperial fluid ounce"
    "degrees centigrade" "degrees fahrenheit" "metric tablespoons" "square centimeters" "square
    centimetres" "degree fahrenheit" "grains per gallon" "metric tablespoon" "square centimeter" "square
    centimetre" "imperial gallons" "metric teaspoons" "australian cups" "australian tbsp" "degrees
    celsius" "imperial gallon" "imperial quarts" "metric teaspoon" "us fluid ounces" "australian cup"
    "deg fahrenheit" "degree celsius" "imperial fl oz" "imperial pints" "imperial quart" "us fluid
    ounce" "us tablespoons" "degrees clark" "imperial cups" "imperial pint" "mg/l as caco3" "mg/l
    hardness" "square inches" "square meters" "square metres" "us tablespoon" "cubic meters" "cubic
    metres" "fluid ounces" "imperial cup" "imperial gal" "ppm as caco3" "ppm hardness" "square meter"
    "square metre" "square yards" "us teaspoons" "centiliters" "centilitres" "centimeters" "centimetres"
    "cubic meter" "cubic metre" "deg celsius" "fluid ounce" "imperial qt" "kilogrammes" "metric cups"
    "metric tbsp" "microliters" "microlitres" "milliliters" "millilitres" "millimeters" "millimetres"
    "percent owg" "percent v/v" "percent w/v" "percent w/w" "square feet" "square foot" "square inch"
    "square yard" "tablespoons" "us teaspoon" "% of goods" "centigrade" "centiliter" "centilitre"
    "centimeter" "centimetre" "deciliters" "decilitres" "fahrenheit" "grains/gal" "kilogramme" "metric
    cup" "metric tsp" "mg caco3/l" "mg/l caco3" "micrograms" "microliter" "microlitre" "milligrams"
    "milliliter" "millilitre" "millimeter" "millimetre" "millimolar" "millimoles" "tablespoon" "uk
    gallons" "us gallons" "deciliter" "decilitre" "deg clark" "degrees c" "degrees f" "grain/gal" "imp
    fl oz" "imp pints" "kilograms" "microgram" "milligram" "millimole" "per mille" "ppm caco3" "sq
    inches" "teaspoons" "uk gallon" "uk quarts" "us gallon" "us quarts" "degree c" "degree f" "fluid oz"
    "imp cups" "imp pint" "kilogram" "per cent" "permille" "teaspoon" "uk fl oz" "uk pints" "uk quart"
    "us fl oz" "us pints" "us quart" "% o.w.f" "% o.w.g" "celsius" "degrees" "gallons" "grammes" "imp
    cup" "imp gal" "kelvins" "minutes" "percent" "seconds" "sq inch" "uk cups" "uk pint" "uk tbsp" "us
    cups" "us pint" "us tbsp" "deg dh" "deg fh" "degree" "dry oz" "gallon" "gr/gal" "grains" "gramme"
    "imp qt" "inches" "kelvin" "liters" "litres" "meters" "metres" "minute" "months" "ounces" "pieces"
    "pounds" "quarts" "second" "tonnes" "uk cup" "uk gal" "uk tsp" "us cup" "us gal" "us qts" "us tsp"
    "°clark" "% m/m" "% m/v" "% owf" "% owg" "% v/v" "% w/v" "% w/w" "% wog" "clark" "deg c" "deg f"
    "dozen" "drops" "fl oz" "grain" "grams" "hours" "kilos" "liter" "litre" "meter" "metre" "molar"
    "moles" "month" "ounce" "oz wt" "parts" "piece" "pints" "pound" "quart" "sq cm" "sq ft" "sq in" "sq
    yd" "tblsp" "tbsps" "times" "tonne" "us pt" "us qt" "weeks" "yards" "%m/m" "%m/v" "%owf" "%owg"
    "%v/v" "%w/v" "%w/w" "cups" "days" "degc" "degf" "drop" "feet" "floz" "foot" "gals" "gram" "hour"
    "inch" "kilo" "ltrs" "mins" "mmol" "mole" "mols" "part" "pint" "secs" "sq m" "tbsp" "time" "tons"
    "tsps" "week" "yard" "° dh" "° fh" "cm2" "cm3" "cms" "cup" "day" "deg" "ft2" "gal" "gms" "gpg" "gsm"
    "hrs" "kgs" "lbs" "ltr" "mcg" "min" "mls" "mms" "mol" "ozs" "pcs" "pct" "ppm" "pts" "qts" "sec"
    "sqm" "tbs" "ton" "tsp" "wks" "yd2" "yds" "° c" "° f" "°dh" "°fh" "cc" "cl" "cm" "dh" "dl" "fh" "ft"
    "gm" "gr" "hr" "kg" "lb" "m2" "m3" "mg" "ml" "mm" "oz" "pc" "pt" "qt" "ug" "ul" "wk" "yd" "°c" "°e"
    "°f" "%" "c" "d" "f" "g" "h" "k" "l" "m" "s" "t" "x" "°" "×" "‰")
  "The units of the dyer's bench.")
;; words: end

(defun tenter-mode--words (list)
  "A regular expression for the words in LIST, any blanks between them."
  (replace-regexp-in-string
   " " "[[:blank:]]+" (mapconcat #'regexp-quote list "\\|") t t))

(defconst tenter-mode--comment "#\\(?:[[:blank:]]\\|$\\)"
  "What opens a comment, at the start of a line or behind a blank.")

(defconst tenter-mode--header
  (concat "^\\("
          (mapconcat (lambda (block) (regexp-opt (plist-get (cdr block) :words)))
                     tenter-mode--blocks "\\|")
          "\\)\\(?:[[:blank:]]+\\(\\(?:[^#\n]\\|[^[:blank:]\n]#\\|#[^[:blank:]\n]\\)*?\\)\\)?[[:blank:]]*\\(?:[[:blank:]]#[[:blank:]\n].*\\)?$")
  "The line that opens a block: its kind, then its name.")

(defconst tenter-mode--edge "^[^[:blank:]\n#0-9]"
  "Where a block opens.")

(defconst tenter-mode--heads
  (mapcar
   (lambda (block)
     (let ((line (lambda (list) (and list (concat "\\(" (tenter-mode--words list) "\\)\\(?:[[:blank:],]\\|$\\)")))))
       (list (car block)
             (funcall line (plist-get (cdr block) :keys))
             (funcall line (plist-get (cdr block) :prose))
             (and (member (car block) '("steps" "variant"))
                  (funcall line tenter-mode--verbs)))))
   tenter-mode--blocks)
  "For each kind of block: its keys, its keys with prose, its verbs.")

(defun tenter-mode--kind ()
  "The kind of the block point is in, or nil."
  (save-excursion
    (end-of-line)
    (when (re-search-backward tenter-mode--edge nil t)
      (let ((word (downcase (buffer-substring-no-properties
                             (point) (progn (skip-chars-forward "^ \t\n") (point)))))
            (blocks tenter-mode--blocks)
            found)
        (while (and blocks (not found))
          (when (member word (plist-get (cdar blocks) :words))
            (setq found (caar blocks)))
          (setq blocks (cdr blocks)))
        found))))

(defun tenter-mode--continues-p ()
  "Whether the line point is on continues another.
It does when it is four columns deeper than that; a blank line ends a
line, a comment of its own does not."
  (save-excursion
    (beginning-of-line)
    (let ((here (point))
          (open nil)
          (continues nil)
          (at-end nil))
      ;; Up to a line that surely continues none, then down again.
      (while (and (zerop (forward-line -1))
                  (not (looking-at-p "[[:blank:]]*$"))
                  (not (looking-at-p tenter-mode--edge))))
      (while (and (<= (point) here) (not at-end))
        (cond
         ((looking-at-p (concat "[[:blank:]]*\\(?:$\\|" tenter-mode--comment "\\)")))
         ((looking-at-p tenter-mode--edge) (setq open nil continues nil))
         ((and open (>= (current-indentation) (+ open 4))) (setq continues t))
         (t (setq open (current-indentation) continues nil)))
        (setq at-end (or (not (zerop (forward-line 1))) (eobp))))
      continues)))

(defun tenter-mode--match-head (limit)
  "Find the head of a line before LIMIT.
Group 1 is a key, 2 a key and 3 its prose, 4 a verb."
  (let (done)
    (while (and (not done) (re-search-forward "^[[:blank:]]+\\([^[:blank:]\n#]\\)" limit t))
      (goto-char (match-beginning 1))
      (let* ((start (point))
             (heads (cdr (assoc (tenter-mode--kind) tenter-mode--heads)))
             (case-fold-search t)
             (data nil))
        (when (and heads (not (tenter-mode--continues-p)))
          (goto-char start)
          (cond
           ((and (nth 0 heads) (looking-at (nth 0 heads)))
            (setq data (list (match-beginning 1) (match-end 1)
                             (match-beginning 1) (match-end 1))))
           ((and (nth 1 heads) (looking-at (nth 1 heads)))
            (let ((begin (match-beginning 1))
                  (end (match-end 1))
                  (from (save-excursion (goto-char (match-end 1)) (skip-chars-forward " \t") (point)))
                  (to (line-end-position)))
              (save-excursion
                (goto-char from)
                (when (re-search-forward (concat "[[:blank:]]+" tenter-mode--comment) to t)
                  (setq to (match-beginning 0))))
              (setq data (list begin (max end to) nil nil begin end (min from to) to))))
           ((and (nth 2 heads) (looking-at (nth 2 heads)))
            (setq data (list (match-beginning 1) (match-end 1) nil nil nil nil nil nil
                             (match-beginning 1) (match-end 1))))))
        (goto-char start)
        (if (not data)
            (end-of-line)
          (set-match-data data)
          (goto-char (match-end 0))
          (setq done t))))
    done))

(defconst tenter-mode--fraction "[¼-¾⅐-⅞]")

(defconst tenter-mode--value
  (concat "[-−]?\\(?:[0-9]+\\(?:\\.[0-9]+\\|[/⁄][0-9]+\\|[[:blank:]]*" tenter-mode--fraction
          "\\|[[:blank:]]+[0-9]+[/⁄][0-9]+\\)?\\|" tenter-mode--fraction "\\|\\.[0-9]+\\)"))

(defconst tenter-mode--number
  (concat "\\(?:^\\|[[:blank:],(]\\)\\("
          "\\(?:\\(?:about\\|around\\|roughly\\|approximately\\|at[[:blank:]]+least\\|at[[:blank:]]+most\\)[[:blank:]]+\\|[~≈≥≤][[:blank:]]*\\)?"
          tenter-mode--value
          "\\(?:[[:blank:]]*[-–—−:±][[:blank:]]*" tenter-mode--value "\\)*\\)"
          "[[:blank:]]*\\(\\(?:" (tenter-mode--words tenter-mode--units) "\\)"
          "\\(?:/[[:alpha:]]+\\|[[:blank:]]+per[[:blank:]]+[[:alpha:]]+\\)?\\(?:[[:blank:],)]\\|$\\)\\)?")
  "A number and the unit behind it.")

(defvar tenter-mode-font-lock-keywords
  `((,tenter-mode--header (1 'font-lock-keyword-face) (2 'font-lock-type-face nil t))
    (tenter-mode--match-head
     (1 'font-lock-variable-name-face nil t)
     (2 'font-lock-variable-name-face nil t)
     (3 'font-lock-string-face nil t)
     (4 'font-lock-function-name-face nil t))
    (,(concat "#[[:xdigit:]]\\{6\\}\\_>") (0 'font-lock-constant-face))
    (,(concat "\\_<because\\_>[[:blank:]]+\\(.*?\\)\\(?:[[:blank:]]+" tenter-mode--comment "\\|$\\)")
     (1 'font-lock-string-face))
    (,(concat "\\_<until\\_>[[:blank:]]+\\([^,#0-9[:blank:]\n][^,\n]*?\\)\\(?:,\\|[[:blank:]]+\\(?:"
              (tenter-mode--words tenter-mode--connectors) "\\)[[:blank:]]+[0-9]\\|[[:blank:]]+"
              tenter-mode--comment "\\|$\\)")
     (1 'font-lock-string-face))
    (,tenter-mode--number (1 'font-lock-constant-face) (2 'font-lock-type-face nil t))
    (,(concat "[[:blank:]]\\(" (tenter-mode--words tenter-mode--connectors) "\\)\\(?:[[:blank:],]\\|$\\)")
     (1 'font-lock-builtin-face)))
  "What is coloured in a dye recipe.")

(defun tenter-mode--syntax-propertize (start end)
  "Mark comments and closed quotes between START and END."
  (goto-char start)
  (while (re-search-forward "[\"“”„][^\"“”„\n]*[\"“”„]\\|#" end t)
    (let ((begin (match-beginning 0)))
      (if (eq (char-after begin) ?#)
          (when (and (memq (char-before begin) '(nil ?\n ?\s ?\t ?, ?\; ?\) ?\" ?“ ?”))
                     (memq (char-after (1+ begin)) '(nil ?\n ?\s ?\t)))
            (put-text-property begin (1+ begin) 'syntax-table (string-to-syntax "<"))
            (end-of-line))
        (put-text-property begin (1+ begin) 'syntax-table (string-to-syntax "|"))
        (put-text-property (1- (match-end 0)) (match-end 0) 'syntax-table (string-to-syntax "|"))))))

(defvar tenter-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "_" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "." table)
    (modify-syntax-entry ?' "w" table)
    (modify-syntax-entry ?- "w" table)
    table)
  "What the characters of a dye recipe are.")

(defun tenter-mode--indentation ()
  "How deep the line point is on should stand."
  (save-excursion
    (beginning-of-line)
    (let ((depth (current-indentation))
          (empty (looking-at-p "[[:blank:]]*$")))
      (cond
       ((and (not empty) (looking-at-p tenter-mode--edge)) 0)
       ((not (zerop (forward-line -1))) 0)
       ((looking-at-p "[[:blank:]]*$") (if empty 0 depth))
       ((and (looking-at-p tenter-mode--edge) (not (looking-at-p "edition\\|use"))) tenter-indent-offset)
       ((and (not empty) (>= depth (+ 4 (current-indentation)))) depth)
       (t (current-indentation))))))

(defun tenter-mode-indent-line ()
  "Set the line in as deep as the one above, or one step under a header.
At a line that is set in already, the next key press takes it to the left
edge, where a block opens."
  (interactive)
  (let* ((here (- (point-max) (point)))
         (wanted (tenter-mode--indentation))
         (again (and (eq this-command last-command)
                     (memq this-command '(indent-for-tab-command tenter-mode-indent-line)))))
    (indent-line-to (if (and again (= (current-indentation) wanted)) 0 wanted))
    (when (> (- (point-max) here) (point))
      (goto-char (- (point-max) here)))))

(defvar tenter-mode-imenu-expression
  `((nil ,tenter-mode--header 0))
  "The blocks of a recipe, for `imenu'.")

(defun tenter-mode--outline-level ()
  "Each block is of one level."
  1)

;;;###autoload
(define-derived-mode tenter-mode prog-mode "Dye"
  "Major mode for textile dye recipes.
Totals and warnings come from the server, through Eglot: \\[eglot]."
  (setq-local comment-start "# ")
  (setq-local comment-end "")
  (setq-local comment-start-skip "#+[[:blank:]]+")
  (setq-local font-lock-defaults '(tenter-mode-font-lock-keywords nil t))
  (setq-local syntax-propertize-function #'tenter-mode--syntax-propertize)
  (setq-local indent-line-function #'tenter-mode-indent-line)
  (setq-local indent-tabs-mode nil)
  (setq-local electric-indent-inhibit t)
  (setq-local imenu-generic-expression tenter-mode-imenu-expression)
  (setq-local imenu-case-fold-search t)
  (setq-local outline-regexp "[^[:blank:]\n#0-9]")
  (setq-local outline-level #'tenter-mode--outline-level))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.dye\\'" . tenter-mode))

;; The language is called `dye' by the server.
(put 'tenter-mode 'eglot-language-id "dye")

(defvar eglot-server-programs)

(defun tenter-mode--server (&rest _)
  "The server's command, for Eglot."
  tenter-server-command)

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(tenter-mode . tenter-mode--server)))

(provide 'tenter-mode)

;;; tenter-mode.el ends here
