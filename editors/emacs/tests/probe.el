;;; probe.el --- What a user sees of the mode, against the real server  -*- lexical-binding: t -*-

;;; Commentary:
;; Run by ../test: emacs --batch -L .. -l probe.el RECIPE.  Ends with 0 if all holds.

;;; Code:

(require 'package)
(package-initialize)
(require 'tenter-mode)
(require 'eglot)
(require 'flymake)

(defvar probe-failed 0)

(defun probe (what holds &optional seen)
  "Say WHAT was looked at and whether it HOLDS; if not, what was SEEN."
  (princ (format "  %s %s%s\n" (if holds "ok     " "FAILED ") what (if holds "" (format ": %S" seen))))
  (unless holds (setq probe-failed (1+ probe-failed))))

(defun probe-wait (seconds until)
  "Wait up to SECONDS until UNTIL gives something."
  (let ((end (+ (float-time) seconds)))
    (while (and (< (float-time) end) (not (funcall until)))
      (accept-process-output nil 0.02)
      (sit-for 0))))

(defun probe-face (line text)
  "The face of TEXT in the line that begins with LINE."
  (goto-char (point-min))
  (re-search-forward (concat "^" (regexp-quote line)))
  (beginning-of-line)
  (search-forward text (line-end-position))
  (get-text-property (match-beginning 0) 'face))

(setq tenter-server-command (list (getenv "TENTER") "lsp"))
(setq make-backup-files nil create-lockfiles nil eglot-sync-connect 10 flymake-no-changes-timeout 0.05 eglot-send-changes-idle-time 0.05)
(find-file (car command-line-args-left))
(setq command-line-args-left nil)
(set-window-buffer (selected-window) (current-buffer))

(probe "a .dye file is in tenter-mode" (eq major-mode 'tenter-mode) major-mode)
(font-lock-ensure)
(dolist (one '(("recipe" "recipe" font-lock-keyword-face) ("recipe" "Jollify" font-lock-type-face)
               ("  about" "about" font-lock-variable-name-face) ("  about" "nobody" font-lock-string-face)
               ("  room" "room" font-lock-variable-name-face) ("  room" "22" font-lock-constant-face)
               ("  room" "°C" font-lock-type-face) ("  squirt" "squirt" font-lock-function-name-face)
               ("  squirt" "70" font-lock-constant-face) ("  squirt" "mL/piece" font-lock-type-face)
               ("  squirt" "from" font-lock-builtin-face) ("  soap off" "off" font-lock-function-name-face)
               ("  soap off" "times" font-lock-type-face) ("  colour" "#1d5fa6" font-lock-constant-face)
               ("  rinse" "until" font-lock-builtin-face) ("  rinse" "nearly" font-lock-string-face)
               ("  presss" "# finding" font-lock-comment-delimiter-face) ("  presss" "finding" font-lock-comment-face)
               ("  presss" "presss" nil) ("steps wash" "wash off" font-lock-type-face)))
  (let ((seen (probe-face (nth 0 one) (nth 1 one))))
    (probe (format "%S in %S is %s" (nth 1 one) (nth 0 one) (or (nth 2 one) "plain")) (eq seen (nth 2 one)) seen)))

(goto-char (point-min))
(search-forward "colour")
(search-forward "soap off")
(beginning-of-line)
(insert "      in a place\n")
(forward-line -1)
(probe "a line four columns deeper continues the one above" (tenter-mode--continues-p))
(delete-region (point) (progn (forward-line 1) (point)))
(probe "a line of the block does not" (not (tenter-mode--continues-p)))

(let ((start (progn (goto-char (point-max)) (point))))
  (insert "\nmix rinse")
  (newline-and-indent)
  (insert "5 L water")
  (probe "a line under a header is set in" (= (current-indentation) 2) (current-indentation))
  (newline-and-indent)
  (probe "the next one stands as deep" (= (current-indentation) 2) (current-indentation))
  (insert "1 g soda ash")
  (comment-line 1)
  (probe "a line is commented out" (save-excursion (goto-char start) (search-forward "# 1 g soda ash" nil t)))
  (delete-region start (point-max)))
(probe "the blocks are listed" (> (length (let ((imenu-auto-rescan t)) (imenu--make-index-alist t))) 8))

(apply #'eglot (eglot--guess-contact))
(probe "the server answers" (eglot-current-server))
(flymake-mode 1)
(flymake-start)
(probe-wait 10 #'flymake-diagnostics)
(let ((found (flymake-diagnostics)))
  (probe "the misspelt verb is found, and nothing else"
         (and (= (length found) 1)
              (equal "presss" (buffer-substring-no-properties (flymake-diagnostic-beg (car found)) (flymake-diagnostic-end (car found)))))
         (mapcar #'flymake-diagnostic-text found))
  (when found (princ (format "          %s\n" (flymake-diagnostic-text (car found))))))
(goto-char (point-max))
(insert "  soak     tees in soda s")
(eglot--signal-textDocument/didChange)
(let* ((answer (eglot-completion-at-point))
       (labels (mapcar #'substring-no-properties (all-completions "" (nth 2 answer)))))
  (probe "`soda s' completes to `soda soak'" (member "soda soak" labels) labels))
(set-buffer-modified-p nil)
(ignore-errors (eglot-shutdown (eglot-current-server) nil 3))
(kill-emacs (if (zerop probe-failed) 0 1))

;;; probe.el ends here
