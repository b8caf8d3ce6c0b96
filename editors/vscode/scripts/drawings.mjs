// Draws the icons: a tee with rings, as folding and binding leave them. `npm run drawings`; the big one needs Chromium.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const MEDIA = fileURLToPath(new URL("../media/", import.meta.url));
const TEE = "M5.2 1.8 1.2 4.1 2.8 7.2 4.3 6.5V14.4H11.7V6.5L13.2 7.2 14.8 4.1 10.8 1.8C10.2 3.3 5.8 3.3 5.2 1.8Z";

const svg = (box, body) => `<svg xmlns="http://www.w3.org/2000/svg" width="${box}" height="${box}" viewBox="0 0 ${box} ${box}">${body}</svg>\n`;
const write = (name, text) => writeFileSync(`${MEDIA}${name}`, text);

for (const [theme, cloth, ring, heart] of [["light", "#2b6cb0", "#ffd98a", "#ffffff"], ["dark", "#5f9fdc", "#fbe3a6", "#1f2937"]]) {
  write(`dye-${theme}.svg`, svg(16, `<path fill="${cloth}" d="${TEE}"/><circle cx="8" cy="9" r="2.5" fill="none" stroke="${ring}" stroke-width="1.3"/><circle cx="8" cy="9" r=".8" fill="${heart}"/>`));
}
for (const [theme, ink] of [["light", "#424242"], ["dark", "#c5c5c5"]]) {
  const line = `fill="none" stroke="${ink}" stroke-width="1.2" stroke-linecap="round" stroke-linejoin="round"`;
  write(`totals-${theme}.svg`, svg(16, `<path ${line} d="M3 3.5H8M11 3.5H13M3 6.5H8M11 6.5H13M3 9.5H13M3 12.5H7M10 12.5H13"/>`));
  write(`print-${theme}.svg`, svg(16, `<path ${line} d="M4.5 6V2.5H11.5V6M4.5 11.5H2.5V6H13.5V11.5H11.5M4.5 9.5H11.5V13.5H4.5Z"/>`));
}

/** A ring that is not quite round: dye creeps along the threads. */
function ring(radius, wobble, phase) {
  const points = Array.from({ length: 73 }, (_, index) => {
    const angle = (index / 72) * 2 * Math.PI;
    const r = radius * (1 + wobble * Math.sin(7 * angle + phase) + 0.5 * wobble * Math.sin(13 * angle - 2 * phase));
    return `${(128 + r * Math.cos(angle)).toFixed(1)} ${(146 + r * Math.sin(angle)).toFixed(1)}`;
  });
  return `M${points.join("L")}Z`;
}
const big = svg(
  256,
  `<rect width="256" height="256" rx="44" fill="#f4efe6"/><clipPath id="tee"><path transform="translate(16 16) scale(14)" d="${TEE}"/></clipPath>` +
    `<g clip-path="url(#tee)"><rect width="256" height="256" fill="#1f5a96"/>` +
    `<path d="${ring(92, 0.04, 0.4)}" fill="#3f86c6"/><path d="${ring(66, 0.05, 1.7)}" fill="#f0b944"/>` +
    `<path d="${ring(44, 0.06, 2.9)}" fill="#f8e3b0"/><path d="${ring(21, 0.08, 0.9)}" fill="#b5532a"/></g>`,
);
write("icon.svg", big);

const chromium = process.env.CHROMIUM ?? "/usr/bin/chromium";
const { chromium: browsers } = await import("playwright-core");
const browser = await browsers.launch({ executablePath: chromium, args: ["--no-sandbox", "--disable-gpu"] });
const page = await browser.newPage({ viewport: { width: 256, height: 256 } });
await page.setContent(`<style>body{margin:0}svg{display:block}</style>${big}`);
await page.screenshot({ path: `${MEDIA}icon.png`, omitBackground: true });
await page.setViewportSize({ width: 200, height: 60 });
await browser.close();
