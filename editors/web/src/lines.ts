/** A text with line feeds alone between its lines, as the text editor and the engine count them. */
export const evenLines = (text: string): string => text.replace(/\r\n?/g, "\n");
