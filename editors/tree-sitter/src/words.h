/* Written by scripts/words.mjs from editors/words.json. Do not edit. */
enum Kind { KIND_LOOSE, KIND_UNKNOWN, KIND_EDITION, KIND_USE, KIND_RECIPE, KIND_GOODS, KIND_DYE, KIND_CHEMICAL, KIND_MIX, KIND_LAYOUT, KIND_VESSEL, KIND_STEPS, KIND_VARIANT, KIND_LOG, KIND_SHELF };
static const struct { const char *word; enum Kind kind; } KIND_WORDS[] = {
  {"edition", KIND_EDITION},
  {"use", KIND_USE},
  {"recipe", KIND_RECIPE},
  {"goods", KIND_GOODS},
  {"dye", KIND_DYE},
  {"chemical", KIND_CHEMICAL},
  {"material", KIND_CHEMICAL},
  {"mix", KIND_MIX},
  {"layout", KIND_LAYOUT},
  {"vessel", KIND_VESSEL},
  {"steps", KIND_STEPS},
  {"step", KIND_STEPS},
  {"variant", KIND_VARIANT},
  {"log", KIND_LOG},
  {"shelf", KIND_SHELF},
  {0, KIND_LOOSE},
};

static const char *const EMPTY[] = {0};

static const char *const VERBS[] = {
  "add", "agitate", "batch", "bind", "bleach", "boil", "brush", "check", "cool", "cover", "crumple", "cure", "dip", "discard", "discharge", "dispose", "dispose of", "dissolve", "drain", "drip", "drip dry", "dry", "dye", "flip", "fold", "heap", "heat", "hold", "immerse", "iron", "irrigate", "keep", "leave", "lift", "lower", "make", "make up", "mark", "measure", "microwave", "mist", "mix", "move", "neutralise", "neutralize", "open", "paint", "paste", "pile", "pleat", "pour", "prepare", "press", "prewet", "print", "put on", "raise", "repeat", "rest", "rinse", "scatter", "scour", "scrunch", "sieve", "sift", "simmer", "soak", "soap", "soap off", "soften", "sour", "spin", "spin out", "spray", "sprinkle", "squeeze", "squeeze out", "squirt", "stamp", "stand", "steam", "steep", "stir", "store", "strew", "strip", "submerge", "test", "tie", "top up", "turn", "unbind", "uncover", "unfold", "untie", "unwrap", "wait", "warm", "wash", "wear", "weigh", "wet", "wet out", "wet-out", "wrap", "wring", "wring out", 0,
};

static const char *const CONNECTORS[] = {
  "after", "and", "as", "at", "because", "before", "bought", "by", "every", "for", "from", "in", "into", "on", "onto", "over", "through", "to", "under", "until", "with", "without", 0,
};

static const char *const UNITS[] = {
  "%", "% m/m", "% m/v", "% o.w.f", "% o.w.g", "% of goods", "% owf", "% owg", "% v/v", "% w/v", "% w/w", "% wog", "%m/m", "%m/v", "%owf", "%owg", "%v/v", "%w/v", "%w/w", "australian cup", "australian cups", "australian tablespoon", "australian tablespoons", "australian tbsp", "c", "cc", "celsius", "centigrade", "centiliter", "centiliters", "centilitre", "centilitres", "centimeter", "centimeters", "centimetre", "centimetres", "cl", "clark", "cm", "cm2", "cm3", "cms", "cubic meter", "cubic meters", "cubic metre", "cubic metres", "cup", "cups", "d", "day", "days", "deciliter", "deciliters", "decilitre", "decilitres", "deg", "deg c", "deg celsius", "deg clark", "deg dh", "deg f", "deg fahrenheit", "deg fh", "degc", "degf", "degree", "degree c", "degree celsius", "degree f", "degree fahrenheit", "degrees", "degrees c", "degrees celsius", "degrees centigrade", "degrees clark", "degrees f", "degrees fahrenheit", "dh", "dl", "dozen", "drop", "drops", "dry oz", "f", "fahrenheit", "feet", "fh", "fl oz", "floz", "fluid ounce", "fluid ounces", "fluid oz", "foot", "ft", "ft2", "g", "gal", "gallon", "gallons", "gals", "gm", "gms", "gpg", "gr", "gr/gal", "grain", "grain/gal", "grains", "grains per gallon", "grains/gal", "gram", "gramme", "grammes", "grams", "gsm", "h", "hour", "hours", "hr", "hrs", "imp cup", "imp cups", "imp fl oz", "imp gal", "imp pint", "imp pints", "imp qt", "imperial cup", "imperial cups", "imperial fl oz", "imperial fluid ounce", "imperial fluid ounces", "imperial gal", "imperial gallon", "imperial gallons", "imperial pint", "imperial pints", "imperial qt", "imperial quart", "imperial quarts", "inch", "inches", "k", "kelvin", "kelvins", "kg", "kgs", "kilo", "kilogram", "kilogramme", "kilogrammes", "kilograms", "kilos", "l", "lb", "lbs", "liter", "liters", "litre", "litres", "ltr", "ltrs", "m", "m2", "m3", "mcg", "meter", "meters", "metre", "metres", "metric cup", "metric cups", "metric tablespoon", "metric tablespoons", "metric tbsp", "metric teaspoon", "metric teaspoons", "metric tsp", "mg", "mg caco3/l", "mg/l as caco3", "mg/l caco3", "mg/l hardness", "microgram", "micrograms", "microliter", "microliters", "microlitre", "microlitres", "milligram", "milligrams", "milliliter", "milliliters", "millilitre", "millilitres", "millimeter", "millimeters", "millimetre", "millimetres", "millimolar", "millimole", "millimoles", "min", "mins", "minute", "minutes", "ml", "mls", "mm", "mmol", "mms", "mol", "molar", "mole", "moles", "mols", "month", "months", "ounce", "ounces", "oz", "oz wt", "ozs", "part", "parts", "pc", "pcs", "pct", "per cent", "per mille", "percent", "percent owg", "percent v/v", "percent w/v", "percent w/w", "permille", "piece", "pieces", "pint", "pints", "pound", "pounds", "ppm", "ppm as caco3", "ppm caco3", "ppm hardness", "pt", "pts", "qt", "qts", "quart", "quarts", "s", "sec", "second", "seconds", "secs", "sq cm", "sq ft", "sq in", "sq inch", "sq inches", "sq m", "sq yd", "sqm", "square centimeter", "square centimeters", "square centimetre", "square centimetres", "square feet", "square foot", "square inch", "square inches", "square meter", "square meters", "square metre", "square metres", "square yard", "square yards", "t", "tablespoon", "tablespoons", "tblsp", "tbs", "tbsp", "tbsps", "teaspoon", "teaspoons", "time", "times", "ton", "tonne", "tonnes", "tons", "tsp", "tsps", "ug", "uk cup", "uk cups", "uk fl oz", "uk gal", "uk gallon", "uk gallons", "uk pint", "uk pints", "uk quart", "uk quarts", "uk tbsp", "uk tsp", "ul", "us cup", "us cups", "us fl oz", "us fluid ounce", "us fluid ounces", "us gal", "us gallon", "us gallons", "us pint", "us pints", "us pt", "us qt", "us qts", "us quart", "us quarts", "us tablespoon", "us tablespoons", "us tbsp", "us teaspoon", "us teaspoons", "us tsp", "week", "weeks", "wk", "wks", "x", "yard", "yards", "yd", "yd2", "yds", "°", "° c", "° dh", "° f", "° fh", "°c", "°clark", "°dh", "°e", "°f", "°fh", "×", "‰", 0,
};

static const char *const KEYS_EDITION[] = {
  0,
};

static const char *const PROSE_EDITION[] = {
  0,
};

static const char *const KEYS_USE[] = {
  "accept", 0,
};

static const char *const PROSE_USE[] = {
  "note", "notes", 0,
};

static const char *const KEYS_RECIPE[] = {
  "accept", "altitude", "currency", "depth", "hardness", "measures", "room", "shade", "water hardness", 0,
};

static const char *const PROSE_RECIPE[] = {
  "about", "by", "for", "licence", "license", "note", "notes", "source", "version", 0,
};

static const char *const KEYS_GOODS[] = {
  "accept", "area", "color", "colour", "fiber", "fibers", "fibre", "fibres", "piece", "pieces", "price", "state", "thread", "trim", "weight", 0,
};

static const char *const PROSE_GOODS[] = {
  "note", "notes", "source", 0,
};

static const char *const KEYS_DYE[] = {
  "accept", "bulk density", "class", "color", "colour", "density", "form", "hazard", "hazards", "index", "is", "price", "purity", "solubility", "state", "strength", 0,
};

static const char *const PROSE_DYE[] = {
  "note", "notes", "source", 0,
};

static const char *const KEYS_CHEMICAL[] = {
  "accept", "bulk density", "density", "form", "formula", "hazard", "hazards", "is", "price", "purity", "role", "solubility", "state", "strength", 0,
};

static const char *const PROSE_CHEMICAL[] = {
  "note", "notes", "source", 0,
};

static const char *const KEYS_MIX[] = {
  "accept", "fill up", "fixed", "keep", "make up", "price", "rest", "stir", "top up", 0,
};

static const char *const PROSE_MIX[] = {
  "note", "notes", 0,
};

static const char *const KEYS_LAYOUT[] = {
  "accept", "back", "beside", "folds", "front", "layers", "zone", 0,
};

static const char *const PROSE_LAYOUT[] = {
  "note", "notes", 0,
};

static const char *const KEYS_VESSEL[] = {
  "accept", "closed", "food", "holds", "material", "rated", 0,
};

static const char *const PROSE_VESSEL[] = {
  "note", "notes", 0,
};

static const char *const KEYS_STEPS[] = {
  "accept", 0,
};

static const char *const PROSE_STEPS[] = {
  "about", "note", "notes", 0,
};

static const char *const KEYS_VARIANT[] = {
  "accept", "in", 0,
};

static const char *const PROSE_VARIANT[] = {
  "about", "note", "notes", 0,
};

static const char *const KEYS_LOG[] = {
  "accept", "made", "rating", "room", "took", "weighed", 0,
};

static const char *const PROSE_LOG[] = {
  "changed", "found", "note", "notes", "photo", 0,
};

static const char *const KEYS_SHELF[] = {
  "accept", "currency", 0,
};

static const char *const PROSE_SHELF[] = {
  "note", "notes", 0,
};

static const char *const KEYS_ANY[] = {
  "accept", "altitude", "area", "back", "beside", "bulk density", "class", "closed", "color", "colour", "currency", "density", "depth", "fiber", "fibers", "fibre", "fibres", "fill up", "fixed", "folds", "food", "form", "formula", "front", "hardness", "hazard", "hazards", "holds", "in", "index", "is", "keep", "layers", "made", "make up", "material", "measures", "piece", "pieces", "price", "purity", "rated", "rating", "rest", "role", "room", "shade", "solubility", "state", "stir", "strength", "thread", "took", "top up", "trim", "water hardness", "weighed", "weight", "zone", 0,
};

static const char *const PROSE_ANY[] = {
  "about", "by", "changed", "for", "found", "licence", "license", "note", "notes", "photo", "source", "version", 0,
};

static const char *const *const KEYS[] = {EMPTY, EMPTY, KEYS_EDITION, KEYS_USE, KEYS_RECIPE, KEYS_GOODS, KEYS_DYE, KEYS_CHEMICAL, KEYS_MIX, KEYS_LAYOUT, KEYS_VESSEL, KEYS_STEPS, KEYS_VARIANT, KEYS_LOG, KEYS_SHELF};
static const char *const *const PROSE[] = {EMPTY, EMPTY, PROSE_EDITION, PROSE_USE, PROSE_RECIPE, PROSE_GOODS, PROSE_DYE, PROSE_CHEMICAL, PROSE_MIX, PROSE_LAYOUT, PROSE_VESSEL, PROSE_STEPS, PROSE_VARIANT, PROSE_LOG, PROSE_SHELF};
