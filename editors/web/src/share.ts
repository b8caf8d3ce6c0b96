/**
 * A recipe as a link: name and text, compressed, behind the `#`. A browser sends that part to nobody.
 *
 * `#r1=` is followed by the base64url form of the raw DEFLATE of `name`, a line feed, and the text in UTF-8.
 */

export interface Shared {
  name: string;
  text: string;
}

const MARK = "#r1=";
/** No recipe is longer, in bytes; a link that unpacks to more is not one of ours. */
const LONGEST = 2_000_000;

/** The part of the link behind the page's address. */
export async function toFragment({ name, text }: Shared): Promise<string> {
  const packed = await through(new TextEncoder().encode(`${name}\n${text}`), new CompressionStream("deflate-raw"), Infinity);
  let binary = "";
  for (const byte of packed) binary += String.fromCharCode(byte);
  return MARK + btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** The recipe of a link; null where the link carries none. */
export async function fromFragment(fragment: string): Promise<Shared | null> {
  if (!fragment.startsWith(MARK)) return null;
  const binary = atob(fragment.slice(MARK.length).replaceAll("-", "+").replaceAll("_", "/"));
  const packed = Uint8Array.from(binary, (c) => c.charCodeAt(0));
  const bytes = await through(packed, new DecompressionStream("deflate-raw"), LONGEST);
  const whole = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  const cut = whole.indexOf("\n");
  if (cut < 0) throw new Error("the link is not whole");
  return { name: fileName(whole.slice(0, cut)), text: whole.slice(cut + 1) };
}

/** A name that is one of a `.dye` file and of nothing else. */
export function fileName(wanted: string): string {
  const plain = wanted.normalize("NFC").replace(/\.dye$/i, "").replace(/[^\p{L}\p{N} _-]+/gu, " ").trim().replace(/\s+/g, "-");
  return `${plain.slice(0, 60) || "recipe"}.dye`;
}

async function through(bytes: Uint8Array, by: GenericTransformStream, most: number): Promise<Uint8Array> {
  const writer = (by.writable as WritableStream<Uint8Array>).getWriter();
  const written = writer.write(bytes).then(() => writer.close());
  // What goes wrong is told by the reading end.
  written.catch(() => undefined);
  const reader = (by.readable as ReadableStream<Uint8Array>).getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      throw new Error("the link holds too much");
    }
    parts.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
