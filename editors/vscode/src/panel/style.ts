// How the pages look: the editor's own colours and fonts in the window, ink on paper when printed.

const SHEET = `
h1 { font-size: 1.35em; font-weight: 600; margin: 0 0 .2em; }
h2 { font-size: 1em; font-weight: 600; margin: 1.9em 0 .5em; }
h3 { font-size: 1em; font-weight: 600; margin: 1.4em 0 .3em; }
p { margin: .3em 0; max-width: 44em; }
pre { margin: 0; white-space: pre; overflow-x: auto; line-height: 1.5; }
ul { margin: .4em 0; padding-left: 1.3em; max-width: 48em; }
li { margin: .3em 0; }
li.task { list-style: none; margin-left: -1.3em; padding-left: 1.9em; position: relative; }
li.task::before { content: ""; position: absolute; left: .1em; top: .22em; width: .85em; height: .85em; box-sizing: border-box; border: 1px solid currentColor; border-radius: 2px; opacity: .75; }
`;

/** In a window of the editor. */
export const WINDOW_STYLE = `
body { color: var(--vscode-foreground); background: var(--vscode-editor-background); font: var(--vscode-font-size, 13px)/1.5 var(--vscode-font-family, sans-serif); padding: 1.2em 1.5em 3em; }
${SHEET}
pre { font: var(--vscode-editor-font-size, 13px) var(--vscode-editor-font-family, monospace); font-size: .95em; line-height: 1.55; }
h2 { color: var(--vscode-foreground); }
.about, .quiet { color: var(--vscode-descriptionForeground); }
.here { margin: 1.3em 0 0; padding: .8em 1.1em .9em; border-left: 3px solid var(--vscode-textLink-foreground); background: var(--vscode-textBlockQuote-background, transparent); }
.here h2 { margin: 0 0 .5em; }
.here h2 + pre:empty { display: none; }
[hidden] { display: none; }
`;

/** On paper, and in the browser that prints it. */
export const PAPER_STYLE = `
@page { margin: 16mm 15mm; }
body { color: #111; background: #fff; font: 10.5pt/1.45 system-ui, sans-serif; max-width: 180mm; margin: 10mm auto; }
${SHEET}
pre { font: 9pt/1.45 ui-monospace, "DejaVu Sans Mono", Consolas, monospace; white-space: pre-wrap; }
h1 { font-size: 15pt; }
h1, h2, h3 { break-after: avoid; }
pre, li { break-inside: avoid; }
.about, .quiet { color: #444; }
.blank { border-bottom: .4pt solid #777; height: 2.4em; }
@media print { body { margin: 0; max-width: none; } }
`;
