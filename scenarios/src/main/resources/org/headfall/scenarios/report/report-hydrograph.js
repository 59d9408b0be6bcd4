// Levels and discharge of one site, or heads of several, over time.

const hydrograph = { chosen: null, others: [], allLevels: false };
const MOST_OTHERS = 6;
const REFERENCE_COLOURS = { GROUND: "ground", OUTLET: "good", AQUIFER_TOP: "ink", PUMP_INTAKE: "close", LOWEST_LEVEL: "close", LIMIT: "bad" };
const REFERENCE_DASHES = { GROUND: [], OUTLET: [6, 4], AQUIFER_TOP: [12, 4], PUMP_INTAKE: [3, 3], LOWEST_LEVEL: [8, 3, 2, 3], LIMIT: [10, 4, 2, 4] };

const timesOf = record => record.days.map(day => START + day * DAY);
const plotted = values => Array.from(values, v => Number.isNaN(v) ? null : v);

/** Lines of the graph of levels: label, values, colour, dash. */
function levelLines(name, record) {
  const lines = [], add = (label, values, colour, dash, width) => {
    if (values) lines.push({ label, values, colour, dash, width: width || 2 });
  };
  add(hydrograph.others.length ? name : "Head in the aquifer", record.head, "start", [8, 4]);
  if (!hydrograph.others.length) add("Level in the bore", record.level, "water", []);
  const changed = whatIfHead(name);
  if (changed) add("Head in the aquifer, what if", changed, "bad", [2, 2], 2.4);
  hydrograph.others.forEach((other, i) => {
    const at = series.get(other);
    add(other, at.head && record.days.map(day => seriesAt(at.days, at.head, day)), LINE_COLOURS[i % 7], LINE_DASHES[(i + 1) % 7]);
  });
  return lines;
}

/** Lowest and highest value of some lines. */
function spanOf(lines) {
  let low = Infinity, high = -Infinity;
  for (const line of lines) {
    for (const v of line.values) { if (v < low) low = v; if (v > high) high = v; }
  }
  return [low, high];
}

/** Levels to compare with; those far from the heads only if all are wanted, since they would flatten the graph. */
function referenceLines(record, [low, high]) {
  const room = Math.max(2, 1.2 * (high - low)), near = [], far = [];
  for (const reference of record.references) {
    if (reference.level === null) continue;
    const close = reference.level > low - room && reference.level < high + room;
    (close || hydrograph.allLevels ? near : far).push(reference);
  }
  return [near.map(reference => ({ label: reference.label, values: record.days.map(() => reference.level),
    colour: REFERENCE_COLOURS[reference.kind], dash: REFERENCE_DASHES[reference.kind], width: 1.5 })), far];
}

function drawHydrograph() {
  const record = series.get(hydrograph.chosen), box = byId("hydrograph-level");
  if (!record) return;
  const lines = levelLines(hydrograph.chosen, record), [references, far] = referenceLines(record, spanOf(lines));
  const all = lines.concat(hydrograph.others.length ? [] : references), height = box.clientWidth < 500 ? 280 : 360;
  const drawn = all.map(line => ({ label: shortName(line.label), stroke: ink(line.colour), width: line.width, dash: line.dash, points: { show: false },
    value: legendValue(levelWords) }));
  const columns = [timesOf(record), ...all.map(line => plotted(line.values))];
  if (record.measured.length) addMeasured(record, columns, drawn);
  const title = hydrograph.others.length ? "Heads" : shortName(hydrograph.chosen);
  putChart("hydrograph-level", chartOptions(box, height, title, "m above datum", drawn), columns);
  drawFlow(record);
  hydrographWords(record, far);
}

/** Measured levels as points, on the recorded days nearest to them. */
function addMeasured(record, columns, drawn) {
  const values = record.days.map(() => null);
  for (const [day, level] of record.measured) values[nearest(record.days, day)] = level;
  columns.push(values);
  drawn.push({ label: "Measured", stroke: ink("ink"), width: 0, paths: () => null, points: { show: true, size: 7, fill: ink("paper") }, value: legendValue(levelWords) });
}

function drawFlow(record) {
  const box = byId("hydrograph-flow");
  if (!record.flow || hydrograph.others.length) { putChart("hydrograph-flow", null, null); return; }
  const line = { label: "Discharge", stroke: ink("accent"), width: 2, points: { show: false }, value: legendValue(v => numberWords(v, flowDecimals()) + " " + flowUnit()) };
  putChart("hydrograph-flow", chartOptions(box, 190, "Discharge", flowUnit(), [line]),
    [timesOf(record), plotted(record.flow).map(v => v === null ? null : inFlowUnit(v))]);
}

function hydrographWords(record, far) {
  const left = far.map(reference => reference.label.toLowerCase() + " at " + levelWords(reference.level));
  byId("hydrograph-caption").textContent = hydrograph.chosen + ". Drag over the graph to look closer, double-click to see all of it. "
    + "The level in a bore is lower than the head in the aquifer by the loss of the bore itself."
    + (left.length ? " Outside the graph: " + left.join(", ") + "." : "");
  const rows = [], digits = (values, i) => values ? numberWords(values[i], 2) : DASH;
  let year = null;
  record.days.forEach((day, i) => {
    const iso = isoOfDay(day);
    if (iso.slice(0, 4) === year && i < record.days.length - 1) return;
    year = iso.slice(0, 4);
    rows.push([dateWords(iso), digits(record.head, i), digits(record.level, i), record.flow ? numberWords(inFlowUnit(record.flow[i]), flowDecimals()) : DASH]);
  });
  fillTable(byId("hydrograph-table"), "Levels and discharge of " + hydrograph.chosen,
    ["Date", "Head in the aquifer (m)", "Level in the bore (m)", "Discharge (" + flowUnit() + ")"], rows);
}

function chooseSite(name) {
  if (!series.has(name)) return;
  hydrograph.chosen = name;
  byId("hydrograph-site").value = name;
  drawHydrograph();
}

/** Adds a site to compare with, or takes it away. */
function toggleOther(name) {
  const at = hydrograph.others.indexOf(name);
  if (at >= 0) hydrograph.others.splice(at, 1);
  else if (hydrograph.others.length < MOST_OTHERS && name !== hydrograph.chosen) hydrograph.others.push(name);
  byId("hydrograph-others").replaceChildren(...hydrograph.others.map(other => {
    const button = element("button", shortName(other) + " \u00d7", { type: "button", "aria-label": "Take away " + other });
    button.addEventListener("click", () => toggleOther(other));
    return button;
  }));
  drawHydrograph();
}

function prepareHydrographs() {
  const select = byId("hydrograph-site"), add = byId("hydrograph-add");
  add.append(option("choose a site", ""));
  for (const entry of report.hydrographs) {
    select.append(option(shortName(entry.site), entry.site));
    add.append(option(shortName(entry.site), entry.site));
  }
  select.addEventListener("change", () => chooseSite(select.value));
  add.addEventListener("change", () => { if (add.value) toggleOther(add.value); add.value = ""; });
  byId("hydrograph-all").addEventListener("change", event => { hydrograph.allLevels = event.target.checked; drawHydrograph(); });
  prepareZoom(byId("hydrograph-zoom"), ["hydrograph-level", "hydrograph-flow"]);
  if (report.hydrographs.length) chooseSite(report.hydrographs[0].site);
}
