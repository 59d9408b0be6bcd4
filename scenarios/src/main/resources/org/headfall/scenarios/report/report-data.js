// The figures of the page: the report's JSON and the field on its grid.

const report = JSON.parse(document.getElementById("data").textContent);

/** The field on its grid; its values come with {@link loadField}. */
const field = { x: report.map.x, y: report.map.y, dates: report.map.dates, heads: [], drawdowns: null, ground: null, top: null,
  bottom: null };

async function loadField() {
  const map = report.map, width = map.x.length, cells = width * map.y.length;
  const surface = async name => map[name]
    ? (await unpackTables(map[name], map.surfaceQuantum, width, cells, Float32Array))[0] : null;
  [field.ground, field.top, field.bottom] = await Promise.all([surface("ground"), surface("top"), surface("bottom")]);
  field.heads = await unpackTables(map.heads, map.headQuantum, width, cells, Float32Array);
  if (map.drawdowns) field.drawdowns = await unpackTables(map.drawdowns, map.headQuantum, width, cells, Float32Array);
}

/** What the map can show. `at` gives the value of a cell at a date; `zero` says what lies on either side of zero. */
const QUANTITIES = {
  drawdown: { words: "Drawdown", meaning: "how far head has fallen", zero: "more is worse", height: true,
    at: (date, i) => field.drawdowns ? field.drawdowns[date][i] : field.heads[0][i] - field.heads[date][i] },
  head: { words: "Head", meaning: "level to which water would rise in a bore, above datum", zero: null, height: false,
    at: (date, i) => field.heads[date][i] },
  above: { words: "Head above ground", meaning: "how high water would rise above ground; below zero it stays in the bore",
    zero: "less is worse", needs: "ground", height: true, at: (date, i) => field.heads[date][i] - field.ground[i] },
  margin: { words: "Confined margin", meaning: "head above the top of the aquifer; below zero the aquifer drains",
    zero: "less is worse", needs: "top", height: true, at: (date, i) => field.heads[date][i] - field.top[i] },
};

const shownQuantities = () => Object.keys(QUANTITIES).filter(key => !QUANTITIES[key].needs || field[QUANTITIES[key].needs]);

/** Values of all cells, kept for the quantity and date that were asked for last. */
function gridOf(key, date) {
  const kept = gridOf.kept;
  if (kept && kept.key === key && kept.date === date) return kept.values;
  const values = new Float32Array(field.x.length * field.y.length), at = QUANTITIES[key].at;
  for (let i = 0; i < values.length; i++) values[i] = at(date, i);
  gridOf.kept = { key, date, values };
  return values;
}

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

const siteNamed = name => report.sites.find(site => site.name === name);
