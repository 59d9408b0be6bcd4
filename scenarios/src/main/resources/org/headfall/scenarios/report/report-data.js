"use strict";
// Reads the packed figures of the page. The writing side is PackedField.java.

/** Whole numbers of a base64 text: seven bits a byte, sign lowest; null for a missing value. */
function unpackDifferences(text) {
  const binary = atob(text);
  const numbers = [];
  let code = 0, factor = 1;
  for (let i = 0; i < binary.length; i++) {
    const byte = binary.charCodeAt(i);
    code += (byte & 127) * factor;
    if (byte & 128) { factor *= 128; continue; }
    if (code === 0) numbers.push(null);
    else { const zigzag = code - 1; numbers.push(zigzag % 2 ? -(zigzag + 1) / 2 : zigzag / 2); }
    code = 0; factor = 1;
  }
  return numbers;
}

/** Values of a sequence of packed fields, one Float64Array a date, NaN where missing. */
function unpack(texts, quantum, rowLength) {
  let before = null;
  return texts.map(text => {
    const differences = unpackDifferences(text);
    const units = new Float64Array(differences.length);
    let left = 0, rowStart = 0;
    for (let i = 0; i < units.length; i++) {
      const first = i % rowLength === 0;
      if (differences[i] === null) {
        units[i] = NaN;
        if (first) left = rowStart;
        continue;
      }
      const change = differences[i] + (first ? rowStart : left);
      units[i] = change + (before && !Number.isNaN(before[i]) ? before[i] : 0);
      left = change;
      if (first) rowStart = change;
    }
    before = units;
    return units.map(unit => unit * quantum);
  });
}

const report = JSON.parse(document.getElementById("data").textContent);
const field = (function () {
  const map = report.map, width = map.x.length;
  const surface = name => map[name] ? unpack([map[name]], map.surfaceQuantum, width)[0] : null;
  const heads = unpack(map.heads, map.headQuantum, width);
  const drawdowns = map.drawdowns.length
    ? unpack(map.drawdowns, map.headQuantum, width)
    : heads.map(head => head.map((value, i) => heads[0][i] - value));
  return { x: map.x, y: map.y, dates: map.dates, heads, drawdowns,
    ground: surface("ground"), top: surface("top"), bottom: surface("bottom") };
})();

/** Place of a coordinate among ascending centres: index of the one before it and the share of the way to the next. */
function locate(centres, value) {
  const last = centres.length - 1;
  if (last === 0 || value <= centres[0]) return [0, 0];
  if (value >= centres[last]) return [last - 1, 1];
  let low = 0, high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (centres[middle] <= value) low = middle; else high = middle;
  }
  return [low, (value - centres[low]) / (centres[high] - centres[low])];
}

/** Value between four cell centres; where one is missing, that of the nearest centre. */
function between(values, column, right, row, up) {
  const width = field.x.length;
  const c2 = Math.min(column + 1, width - 1), r2 = Math.min(row + 1, field.y.length - 1);
  const a = values[row * width + column], b = values[row * width + c2];
  const c = values[r2 * width + column], d = values[r2 * width + c2];
  const value = (a * (1 - right) + b * right) * (1 - up) + (c * (1 - right) + d * right) * up;
  if (!Number.isNaN(value)) return value;
  return up < 0.5 ? (right < 0.5 ? a : b) : (right < 0.5 ? c : d);
}

function valueAt(values, x, y) {
  const [column, right] = locate(field.x, x), [row, up] = locate(field.y, y);
  return between(values, column, right, row, up);
}

/** Index of the cell whose centre is nearest. */
function nearest(centres, value) {
  const [i, share] = locate(centres, value);
  return Math.min(centres.length - 1, share < 0.5 ? i : i + 1);
}

const minus = text => text.replace("-", "\u2212");
const metres = value => value === null || !Number.isFinite(value) ? "\u2013" : minus(value.toFixed(2)) + " m";
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
  "November", "December"];

function dateWords(iso) {
  const [year, month, day] = iso.split("-").map(Number);
  return day + " " + MONTHS[month - 1] + " " + year;
}

function element(name, text, attributes) {
  const made = document.createElement(name);
  if (text !== undefined && text !== null) made.textContent = text;
  for (const key in attributes || {}) made.setAttribute(key, attributes[key]);
  return made;
}

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
