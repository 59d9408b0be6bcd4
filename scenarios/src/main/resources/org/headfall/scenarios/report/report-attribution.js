// Who takes how much from whom: the place, date and quantity that are chosen, their parts as shown, the table and the read-out.

/** What is chosen. `cause` is the bore that is read, an index, or null. Tables come with {@link loadAttribution}. */
const taken = { place: 0, date: 0, quantity: "drawdown", cause: null, tables: {} };

const TAKEN = {
  drawdown: { words: "Drawdown", at: "Drawdown at ", decimals: heightDecimals, unit: heightUnit, inUnit: inHeightUnit },
  loss: { words: "Lost discharge", at: "Discharge lost at ", decimals: flowDecimals, unit: flowUnit, inUnit: inFlowUnit },
};

async function loadAttribution() {
  const { places, bores, drawdown, loss } = report.attribution, row = bores.length + 2;
  for (const [key, packed] of [["drawdown", drawdown], ["loss", loss]]) {
    taken.tables[key] = await unpackTables(packed.tables, packed.quantum, row, row * places.length);
  }
}

/** The row of a place at a date: the whole, the part of each bore, drift; null where the quantity is not known. */
function rowOf(quantity, place, date) {
  const row = report.attribution.bores.length + 2, values = taken.tables[quantity][date].subarray(place * row, (place + 1) * row);
  return Number.isNaN(values[0]) ? null : values;
}

/** The quantity that is shown: lost discharge only where anything flows. */
const shownQuantity = () => rowOf(taken.quantity, taken.place, taken.date) ? taken.quantity : "drawdown";

/** Decimals of the parts of a whole: two more than usual where it is so small that half of it could round to nothing. */
function decimalsOf(about, whole) {
  const usual = about.decimals();
  return usual + (Math.abs(about.inUnit(whole)) < 10 / 10 ** usual ? 2 : 0);
}

/** A number rounded to some decimals. */
const roundTo = (value, decimals) => Math.round(value * 10 ** decimals) / 10 ** decimals;

/**
 * The parts of what is chosen, the largest first: amounts in metres or m³/d, and as shown in the chosen unit. What is not linear
 * takes what rounding leaves, so that what is shown adds up to the whole as shown, and shares to 100 %.
 */
function partsOfTaken() {
  const { bores, places, whyNoShares } = report.attribution, quantity = shownQuantity(), about = TAKEN[quantity];
  const [whole, ...values] = rowOf(quantity, taken.place, taken.date), drift = values.pop();
  const whyNot = whyNoShares[report.attribution[quantity].senses[taken.date][taken.place]], decimals = decimalsOf(about, whole);
  const part = (name, amount) => ({ name, amount, shown: roundTo(about.inUnit(amount), decimals),
    share: whyNot ? null : roundTo(100 * amount / whole, 1) });
  const ofBores = values.map((amount, bore) => ({ bore, site: siteNamed(bores[bore]), ...part(bores[bore], amount) }));
  const all = part("all", whole), parts = [...ofBores, part("drift", drift)], sum = key => parts.reduce((s, p) => s + p[key], 0);
  const rest = { name: "rest", amount: whole - sum("amount"), shown: roundTo(all.shown - sum("shown"), decimals),
    share: whyNot ? null : roundTo(100 - sum("share"), 1) };
  return { place: places[taken.place], quantity, decimals, whyNot, all, drift: parts.pop(), rest,
    bores: parts.sort((a, b) => Math.abs(b.amount) - Math.abs(a.amount)) };
}

const amountWords = (part, found) => numberWords(part.shown, found.decimals) + "\u00a0" + TAKEN[found.quantity].unit();
const shareWords = part => part.share === null ? "" : numberWords(part.share, 1) + "\u00a0%";
const withShare = (part, found) => amountWords(part, found) + (part.share === null ? "" : ", " + shareWords(part));

/** "Town 1 (Corella town, proposed)". */
const causeWords = part => shortName(part.name)
  + (part.site ? " (" + (part.site.holder ? part.site.holder + ", " : "") + (part.site.proposed ? "proposed" : "existing") + ")" : "");

function titleOfTaken(found) {
  return TAKEN[found.quantity].at + shortName(found.place) + " from the start until " + dateWords(report.attribution.dates[taken.date]);
}

/** What is said of the bore that is read, or else of the whole. */
function readingOfTaken(found) {
  const words = part => withShare(part, found), cause = found.bores.find(part => part.bore === taken.cause);
  if (cause) return causeWords(cause) + ": " + words(cause) + " of " + amountWords(found.all, found) + " at " + shortName(found.place) + ".";
  const largest = found.bores.filter(part => part.shown !== 0).slice(0, 3);
  return titleOfTaken(found) + ": " + amountWords(found.all, found)
    + (found.whyNot ? " (no shares: " + found.whyNot + ")" : "") + ". "
    + (largest.length ? "Largest parts: " + largest.map(part => causeWords(part) + ": " + words(part)).join("; ") + ". " : "No bore did any of it. ")
    + "Drift " + words(found.drift) + "; not linear, and rounding, " + words(found.rest) + ".";
}

/** The table beside the map: bores that do not round to nothing, how many do, drift, what is not linear, and the sum. */
function fillTakenTable(found) {
  const about = TAKEN[found.quantity], shown = found.bores.filter(part => part.shown !== 0), none = found.bores.length - shown.length;
  const line = (words, part) => [words, numberWords(part.shown, found.decimals), part.share === null ? DASH : numberWords(part.share, 1)];
  const others = { shown: 0, share: found.whyNot ? null : roundTo(found.bores.filter(part => part.shown === 0).reduce((s, p) => s + p.share, 0), 1) };
  fillTable(byId("taken-table"), titleOfTaken(found), ["Cause", about.words + " (" + about.unit() + ")", "Share (%)"], [
    ...shown.map(part => line(causeWords(part), part)),
    ...none ? [line(none + (none === 1 ? " bore that rounds" : " bores that each round") + " to nothing", others)] : [],
    line("Drift: boundaries, recharge and the start", found.drift),
    line("Not linear, and rounding", found.rest),
    line("All, as in the run", { shown: found.all.shown, share: found.whyNot ? null : 100 }),
  ]);
}

function sayTaken(found) {
  byId("taken-reading").textContent = readingOfTaken(found);
  byId("taken-caption").textContent = titleOfTaken(found) + ", by the bores that caused it. The area of a circle is the share of its bore"
    + (found.whyNot ? " in all parts without their signs; no percentages are told: " + found.whyNot : "")
    + ". Symbols are those of the map above. Choose a place in the list, on the map, or with the left and right arrow keys; up and down read one bore after another.";
}

/** Shows what is chosen, everywhere. */
function showTaken() {
  const found = partsOfTaken(), quantity = byId("taken-quantity"), date = byId("taken-date"), words = dateWords(report.attribution.dates[taken.date]);
  byId("taken-place").value = taken.place;
  quantity.value = found.quantity;
  quantity.disabled = !rowOf("loss", taken.place, taken.date);
  date.value = taken.date;
  date.setAttribute("aria-valuetext", words);
  byId("taken-date-words").textContent = words;
  fillTakenTable(found); sayTaken(found); drawTaken(found);
}

function chooseTaken(change) {
  Object.assign(taken, { cause: null }, change);
  lookAtTaken();
  showTaken();
}

/** Reads a bore alone, or all with null. */
function readTaken(bore) {
  if (taken.cause === bore) return;
  taken.cause = bore;
  const found = partsOfTaken();
  sayTaken(found); drawTaken(found);
}

/** The places of the list: those that stand on the map and are known at every date, by their indices. */
const takenPlaces = () => report.attribution.places.map((_, place) => place).filter(place =>
  siteNamed(report.attribution.places[place]) && report.attribution.dates.every((_, date) => rowOf("drawdown", place, date)));

function prepareAttribution() {
  const places = takenPlaces(), { dates, places: names } = report.attribution;
  byId("taken-place").append(...places.map(place => option(shortName(names[place]), place)));
  byId("taken-quantity").append(...Object.keys(TAKEN).map(key => option(TAKEN[key].words, key)));
  byId("taken-date").max = dates.length - 1;
  byId("taken-place").addEventListener("change", event => chooseTaken({ place: +event.target.value }));
  byId("taken-quantity").addEventListener("change", event => chooseTaken({ quantity: event.target.value }));
  byId("taken-date").addEventListener("input", event => chooseTaken({ date: +event.target.value }));
  prepareTakenMap();
  const wanted = report.limits.find(limit => limit.verdict === "CROSSED") || report.limits[0];
  const first = places.find(place => wanted && names[place] === wanted.site);
  unitListeners.push(showTaken);
  chooseTaken({ place: first === undefined ? places[0] : first, date: dates.length - 1 });
}
