// How the pages look: the editor's own colours and fonts in the window, ink on paper when printed.

const SHEET = `
h1 { font-size: 1.35em; font-weight: 600; margin: 0 0 .2em; }
h2 { font-size: 1em; font-weight: 600; margin: 1.9em 0 .5em; }
h3 { font-size: 1em; font-weight: 600; margin: 1.4em 0 .3em; }
p { margin: .3em 0; max-width: 44em; }
pre { margin: 0; white-space: pre; overflow-x: auto; line-height: 1.5; }
table { border-collapse: collapse; margin: .2em 0 .6em; font-variant-numeric: tabular-nums; }
th, td { padding: .22em 0 .22em 1.6em; text-align: left; vertical-align: top; font-weight: normal; white-space: pre-line; }
th:first-child, td:first-child { padding-left: 0; }
.number { text-align: right; white-space: pre; }
tbody tr + tr:not(.beneath) > * { border-top: 1px solid var(--hairline); }
.beneath > td { padding: 0 0 .3em 1.2em; opacity: .75; }
.mix { margin-top: .9em; font-weight: 600; max-width: 46em; }
ul { margin: .4em 0; padding-left: 1.3em; max-width: 48em; }
li { margin: .3em 0; }
li.task { list-style: none; margin-left: -1.3em; padding-left: 1.9em; position: relative; }
li.task::before { content: ""; position: absolute; left: .1em; top: .22em; width: .85em; height: .85em; box-sizing: border-box; border: 1px solid currentColor; border-radius: 2px; opacity: .75; }
`;

/** In a window of the editor. */
export const WINDOW_STYLE = `
body { --hairline: color-mix(in srgb, var(--vscode-foreground) 14%, transparent); color: var(--vscode-foreground); background: var(--vscode-editor-background); font: var(--vscode-font-size, 13px)/1.5 var(--vscode-font-family, sans-serif); padding: 1.2em 1.5em 3em; }
${SHEET}
pre { font: var(--vscode-editor-font-size, 13px) var(--vscode-editor-font-family, monospace); font-size: .95em; line-height: 1.55; }
h2 { color: var(--vscode-foreground); }
.about, .quiet, thead th { color: var(--vscode-descriptionForeground); }
.here { margin: 1.3em 0 0; padding: .8em 1.1em .9em; border-left: 3px solid var(--vscode-textLink-foreground); background: var(--vscode-textBlockQuote-background, transparent); }
.here h2 { margin: 0 0 .5em; }
.here pre { font-size: .88em; }
`;

/** On paper, and in the browser that prints it. */
export const PAPER_STYLE = `
@page { margin: 16mm 15mm; }
body { --hairline: #ccc; color: #111; background: #fff; font: 10.5pt/1.45 system-ui, sans-serif; max-width: 180mm; margin: 10mm auto; }
${SHEET}
pre { font: 9pt/1.45 ui-monospace, "DejaVu Sans Mono", Consolas, monospace; white-space: pre-wrap; }
h1 { font-size: 15pt; }
p, ul { max-width: none; }
h1, h2, h3 { break-after: avoid; }
pre, li, tr { break-inside: avoid; }
.about, .quiet, thead th { color: #444; }
.blank { border-bottom: .4pt solid #777; height: 2.4em; }
@media print { body { margin: 0; max-width: none; } }
`;
