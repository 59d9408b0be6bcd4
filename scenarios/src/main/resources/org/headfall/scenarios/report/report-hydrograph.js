// Levels and flow of a site over time, by uPlot.

const hydrograph = { charts: [], chosen: null };
const DAY = 86400, START = Date.UTC(...report.start.split("-").map((n, i) => i === 1 ? n - 1 : +n)) / 1000;

function seriesOf(entry) {
  const read = (name, quantum) => entry[name] ? Array.from(unpack([entry[name]], quantum, Infinity)[0], v => Number.isNaN(v) ? null : v) : null;
  return { times: entry.days.map(day => START + day * DAY), head: read("aquiferHead", entry.quantum),
    level: read("waterLevel", entry.quantum), flow: read("flow", entry.flowQuantum) };
}

const DASHES = [[], [6, 4], [2, 3], [10, 4, 2, 4], [1, 4], [14, 5]];

function chartOptions(width, height, title, unit, series) {
  const axis = { stroke: ink("ink"), grid: { stroke: ink("line"), width: 1 }, ticks: { stroke: ink("line") } };
  return { width, height, title, series: [{ label: "Date", value: "{YYYY}-{MM}-{DD}" }, ...series],
    tzDate: time => uPlot.tzDate(new Date(time * 1000), "Etc/UTC"),
    axes: [{ ...axis }, { ...axis, size: 62, label: unit, values: (_, splits) => splits.map(v => minus(String(+v.toFixed(3)))) }],
    cursor: { drag: { x: true, y: false } } };
}

function drawHydrograph() {
  const entry = report.hydrographs.find(h => h.site === hydrograph.chosen);
  hydrograph.charts.forEach(chart => chart.destroy());
  hydrograph.charts = [];
  if (!entry) return;
  const data = seriesOf(entry), box = document.getElementById("hydrograph-level"), width = Math.max(240, box.clientWidth);
  const lines = [], columns = [data.times];
  const add = (label, values, colour, dash) => {
    if (!values) return;
    lines.push({ label, stroke: ink(colour), width: dash.length ? 1.5 : 2, dash, points: { show: false }, value: (_, v) => v === null ? "\u2013" : metres(v) });
    columns.push(values);
  };
  add("Head in the aquifer", data.head, "start", DASHES[1]);
  add("Water level in the bore", data.level, "water", DASHES[0]);
  const colours = ["ground", "bad", "good", "close", "quiet"];
  entry.references.forEach((reference, i) => {
    if (reference.level !== null) add(reference.label, data.times.map(() => reference.level), colours[i % colours.length], DASHES[2 + i % 4]);
  });
  const options = chartOptions(width, width < 500 ? 260 : 320, shortName(entry.site), "m above datum", lines);
  if (columns.length > 1) hydrograph.charts.push(new uPlot(options, columns, box));
  if (data.flow) {
    const flow = data.flow.map(v => v === null ? null : fromCubicMetresPerDay(v));
    hydrograph.charts.push(new uPlot(chartOptions(width, 180, "Flow", flowUnit(), [{ label: "Flow", stroke: ink("accent"), width: 2,
      points: { show: false }, value: (_, v) => v === null ? "\u2013" : v.toFixed(2) + " " + flowUnit() }]), [data.times, flow], document.getElementById("hydrograph-flow")));
  }
  hydrographWords(entry, data);
}

function hydrographWords(entry, data) {
  document.getElementById("hydrograph-caption").textContent = entry.site
    + ". Drag over the graph to look closer, double-click to see all of it. Levels in the bore are lower than in the aquifer by the loss of the bore itself.";
  const rows = [];
  let year = null;
  data.times.forEach((time, i) => {
    const date = new Date(time * 1000);
    if (date.getUTCFullYear() === year && i < data.times.length - 1) return;
    year = date.getUTCFullYear();
    const level = values => values && values[i] !== null ? minus(values[i].toFixed(2)) : "\u2013";
    rows.push([dateWords(date.toISOString().slice(0, 10)), level(data.head), level(data.level),
      data.flow && data.flow[i] !== null ? fromCubicMetresPerDay(data.flow[i]).toFixed(2) : "\u2013"]);
  });
  fillTable(document.getElementById("hydrograph-table"), "Levels and flow of " + entry.site,
    ["Date", "Head in the aquifer (m)", "Water level in the bore (m)", "Flow (" + flowUnit() + ")"], rows);
}

function chooseSite(name) {
  if (!report.hydrographs.some(h => h.site === name)) return;
  hydrograph.chosen = name;
  document.getElementById("hydrograph-site").value = name;
  drawHydrograph();
}
