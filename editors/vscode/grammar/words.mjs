// The words the colouring of the notation knows. Verbs are read from the table in spec/7-steps.md; keys and units stand
// here, and tests/grammar.test.mjs asks the language server whether they are all there and no others.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const STEPS_CHAPTER = fileURLToPath(new URL("../../../spec/7-steps.md", import.meta.url));

/** Words that open a block, each with the other words for it. */
export const KINDS = {
  edition: ["edition"], use: ["use"], recipe: ["recipe"], goods: ["goods"], dye: ["dye"],
  chemical: ["chemical", "material"], mix: ["mix"], layout: ["layout"], vessel: ["vessel"],
  steps: ["steps", "step"], variant: ["variant"], log: ["log"], shelf: ["shelf"],
};

/** Keys whose value is words for people. `accept` belongs here too: a rule and a reason. */
export const PROSE = {
  recipe: ["by", "licence", "license", "version", "about", "source", "note", "notes", "for", "accept"],
  goods: ["source", "note", "notes", "accept"],
  dye: ["source", "note", "notes", "accept"],
  chemical: ["source", "note", "notes", "accept"],
  mix: ["note", "notes", "accept"],
  layout: ["note", "notes", "accept"],
  vessel: ["note", "notes", "accept"],
  steps: ["about", "note", "notes", "accept"],
  variant: ["about", "note", "notes", "accept"],
  log: ["note", "notes", "changed", "found", "photo", "accept"],
  shelf: ["note", "notes", "accept"],
  use: ["note", "notes", "accept"],
};

/** Keys whose value is read. */
export const KEYS = {
  recipe: ["depth", "shade", "room", "hardness", "water hardness", "altitude", "measures", "currency"],
  goods: ["pieces", "piece", "weight", "fibre", "fiber", "fibres", "fibers", "thread", "trim", "state", "colour", "color", "area", "price"],
  dye: ["colour", "color", "price", "class", "index", "strength", "density", "bulk density", "solubility", "form", "state", "is", "purity", "hazard", "hazards"],
  chemical: ["price", "strength", "density", "bulk density", "solubility", "form", "state", "is", "formula", "purity", "role", "hazard", "hazards"],
  mix: ["price", "make up", "top up", "fill up", "rest", "keep", "stir", "fixed"],
  layout: ["zone", "folds", "layers", "beside", "front", "back"],
  vessel: ["holds", "material", "rated", "food", "closed"],
  steps: [],
  variant: ["in"],
  log: ["room", "made", "weighed", "took", "rating"],
  shelf: ["currency"],
  use: [],
};

/** Words that open a clause. */
export const CONNECTORS = [
  "into", "in", "without", "with", "at", "for", "from", "to", "onto", "on", "over", "under", "until", "as", "every",
  "through", "before", "because", "bought", "by", "after", "and",
];

/** Words that say how something is done and are no part of a name. */
export const MANNERS = [
  "covered", "wrapped", "lidded", "uncovered", "open", "apart", "each", "apiece", "overnight", "fixed", "once", "twice",
  "together", "altogether", "total", "gently", "evenly", "well", "slowly", "quickly", "thoroughly", "lightly", "loosely",
  "tightly", "flat", "damp", "dry", "wet",
];

/** Units that divide or are divided, each one word or two; longer ones are sorted to the front when used. */
export const UNITS = {
  mass: ["g", "gm", "gms", "gram", "grams", "gramme", "grammes", "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms",
    "kilogramme", "kilogrammes", "mg", "milligram", "milligrams", "µg", "μg", "ug", "mcg", "microgram", "micrograms",
    "tonne", "tonnes", "oz", "ozs", "ounce", "ounces", "oz wt", "dry oz", "lb", "lbs", "pound", "pounds", "grain", "grains",
    "mol", "mols", "mole", "moles", "mmol"],
  volume: ["mL", "mls", "cc", "cm3", "cm³", "millilitre", "millilitres", "milliliter", "milliliters", "L", "ltr", "ltrs",
    "litre", "litres", "liter", "liters", "cL", "dL", "uL", "µL", "m3", "m³", "drop", "drops", "tsp", "tsps", "teaspoon",
    "teaspoons", "tbsp", "tbsps", "tbs", "tblsp", "tablespoon", "tablespoons", "fl oz", "floz", "fluid oz", "fluid ounce",
    "fluid ounces", "cup", "cups", "pint", "pints", "pt", "pts", "quart", "quarts", "qt", "qts", "gal", "gals", "gallon",
    "gallons"],
  temperature: ["°C", "C", "° C", "deg C", "degC", "degree C", "degrees C", "celsius", "degrees celsius", "℃", "°F", "F", "° F",
    "deg F", "degF", "degree F", "degrees F", "fahrenheit", "degrees fahrenheit", "℉", "K", "kelvin", "kelvins"],
  time: ["s", "sec", "secs", "second", "seconds", "min", "mins", "minute", "minutes", "h", "hr", "hrs", "hour", "hours", "day",
    "days", "d", "week", "weeks", "wk", "wks", "month", "months"],
  length: ["m", "cm", "cms", "mm", "mms", "metre", "metres", "meter", "meters", "centimetre", "centimetres", "centimeter",
    "centimeters", "millimetre", "millimetres", "inch", "inches", "ft", "foot", "feet", "yd", "yds", "yard", "yards", "m2",
    "m²", "sq m", "cm2", "cm²", "sq ft", "ft2", "sq yd", "gsm"],
  share: ["% owg", "%owg", "% owf", "%owf", "% wog", "% of goods", "% w/w", "%w/w", "% w/v", "%w/v", "% v/v", "%v/v", "%",
    "percent owg", "percent", "per cent", "pct", "‰", "ppm"],
  count: ["times", "time", "x", "dozen", "piece", "pieces", "pc", "pcs", "part", "parts"],
  hardness: ["mg/L CaCO3", "mg/L hardness", "ppm CaCO3", "ppm hardness", "°dH", "dH", "° dH", "°fH", "fH", "°e", "gr/gal", "gpg"],
};

/** Spellings that mean two things: still coloured as units, since the server asks about them. */
export const DOUBTFUL = ["T", "t", "c", "gr", "°", "deg", "degree", "degrees", "ton", "tons"];

/** Three-letter codes of money are written in capitals. */
export const MONEY = "[A-Z]{3}";

/**
 * The verbs of the table in the chapter on steps.
 * @returns {{ name: string, spellings: string[], direct: "goods" | "liquor" | "material" | "steps" | "none" }[]}
 */
export function verbs() {
  const rows = readFileSync(STEPS_CHAPTER, "utf8").split("\n## The verbs\n")[1]?.split("\n## ")[0]?.split("\n") ?? [];
  const quoted = (cell) => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1]);
  const found = [];
  for (const row of rows) {
    const cells = row.split("|").map((cell) => cell.trim());
    if (cells.length < 6 || !cells[1].startsWith("`")) continue;
    const [name] = quoted(cells[1]);
    found.push({ name, spellings: [name, ...quoted(cells[2])], direct: direct(quoted(cells[3])[0] ?? "") });
  }
  if (found.length < 40) throw new Error(`only ${found.length} verbs were read from spec/7-steps.md`);
  return found;
}

/** What stands right behind a verb, told by the first example of the table. */
function direct(example) {
  if (example.startsWith("tees")) return "goods";
  if (example.startsWith("steps ")) return "steps";
  if (/^[\d.]/.test(example)) return "material";
  if (/^(dye bath|night bottle|soda soak)/.test(example)) return "liquor";
  return "none";
}
