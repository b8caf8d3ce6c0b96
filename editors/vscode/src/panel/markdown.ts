// The bench sheet's Markdown as HTML: no markup, links or pictures out of a recipe, boxes to tick as boxes.
import MarkdownIt from "markdown-it";

const reader = new MarkdownIt("commonmark", { html: false, linkify: false, typographer: false })
  .enable("table")
  .disable(["html_block", "html_inline", "image", "link", "autolink", "reference", "entity"]);

reader.core.ruler.push("boxes", (state) => {
  for (const [index, token] of state.tokens.entries()) {
    const box = token.type === "inline" ? /^\[[ xX]\] /.exec(token.content) : null;
    const text = token.children?.[0];
    const item = state.tokens[index - 2];
    if (box !== null && text?.type === "text" && item?.type === "list_item_open" && text.content.startsWith(box[0])) {
      text.content = text.content.slice(box[0].length);
      item.attrJoin("class", "task");
    }
  }
});

/** A sheet as HTML, safe to show. */
export function sheetHtml(markdown: string): string {
  return reader.render(markdown);
}
