// Numbers, dates and elements as a reader expects them.

const MINUS = "\u2212", DASH = "\u2013", MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August",
  "September", "October", "November", "December"];

const minus = text => text.replace("-", MINUS);

/** A number with fixed decimals, thousands set apart, and a true minus sign; a dash if it is not known. */
function numberWords(value, decimals) {
  if (value === null || value === undefined || !Number.isFinite(value)) return DASH;
  const [whole, rest] = Math.abs(value).toFixed(decimals).split(".");
  const text = whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") + (rest ? "." + rest : "");
  return value < 0 && /[1-9]/.test(text) ? MINUS + text : text;
}

function dateWords(iso) {
  const [year, month, day] = iso.split("-").map(Number);
  return day + " " + MONTHS[month - 1] + " " + year;
}

const DAY = 86400, START = Date.UTC(...report.start.split("-").map((n, i) => i === 1 ? n - 1 : +n)) / 1000;

/** Date of a day since the start, as ISO text. */
const isoOfDay = day => new Date((START + day * DAY) * 1000).toISOString().slice(0, 10);
const dayOfIso = iso => Date.UTC(...iso.split("-").map((n, i) => i === 1 ? n - 1 : +n)) / 1000 / DAY - START / DAY;

/** Whether the page is being printed: then drawings are lower, so that map and section share a page. */
const isPrinted = () => matchMedia("print").matches;

const byId = id => document.getElementById(id);

/** Tells those who listen to the page instead of looking at it. */
function say(text) { byId("messages").textContent = text; }

function element(name, text, attributes) {
  const made = document.createElement(name);
  if (text !== undefined && text !== null) made.textContent = text;
  for (const key in attributes || {}) made.setAttribute(key, attributes[key]);
  return made;
}

function option(text, value) { return element("option", text, { value }); }

/** Fills a table element with a caption, headings and rows of texts. */
function fillTable(table, caption, headings, rows) {
  const head = element("thead"), body = element("tbody"), line = element("tr");
  headings.forEach((heading, i) => line.append(element("th", heading, { scope: "col", class: i ? "number" : "words" })));
  head.append(line);
  for (const row of rows) {
    const tr = element("tr");
    row.forEach((text, i) => tr.append(i ? element("td", text, { class: "number" }) : element("th", text, { scope: "row" })));
    body.append(tr);
  }
  table.replaceChildren(element("caption", caption), head, body);
}

/** Names in drawings are cut short; the full name stands in the tables. */
const shortName = name => name.length > 24 ? name.slice(0, 23) + "\u2026" : name;
