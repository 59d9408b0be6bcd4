// Charts over time, by uPlot: common options, zoom by mouse, buttons and keys, and stacks of areas.

const charts = new Map();

const chartWidth = box => Math.max(240, box.clientWidth);

function chartAxis(extra) {
  return { stroke: ink("ink"), grid: { stroke: ink("line"), width: 1 }, ticks: { stroke: ink("line") }, font: "12px system-ui, sans-serif", ...extra };
}

function chartOptions(box, height, title, unit, lines, range) {
  return { width: chartWidth(box), height, title, series: [{ label: "Date", value: "{YYYY}-{MM}-{DD}" }, ...lines],
    tzDate: time => uPlot.tzDate(new Date(time * 1000), "Etc/UTC"),
    scales: range ? { y: { range } } : {},
    axes: [chartAxis(), chartAxis({ size: 66, label: unit, labelFont: "12px system-ui, sans-serif", labelSize: 18,
      values: (_, splits) => splits.map(v => minus(String(+v.toPrecision(6)))) })],
    legend: { live: true }, cursor: { drag: { x: true, y: false } } };
}

/** Puts a chart into a box in place of the one there, keeping the part of time that it showed. */
function putChart(id, options, columns) {
  const box = byId(id), old = charts.get(id), seen = old && old.zoomed ? { min: old.scales.x.min, max: old.scales.x.max } : null;
  if (old) old.destroy();
  if (!columns) { charts.delete(id); return null; }
  const chart = new uPlot({ ...options, hooks: { ...options.hooks, setScale: [(u, key) => {
    if (key === "x") u.zoomed = u.scales.x.min > u.data[0][0] || u.scales.x.max < u.data[0][u.data[0].length - 1];
  }] } }, columns, box);
  charts.set(id, chart);
  if (seen) chart.setScale("x", seen);
  return chart;
}

function resizeCharts() {
  charts.forEach(chart => {
    const width = chartWidth(chart.root.parentElement);
    if (chart.width !== width) chart.setSize({ width, height: chart.height });
  });
}

/** Shows a part of the time: a factor closer or wider, and a share of the shown part later or earlier. */
function moveCharts(ids, factor, later) {
  for (const id of ids) {
    const chart = charts.get(id);
    if (!chart) continue;
    const { min, max } = chart.scales.x, times = chart.data[0], first = times[0], last = times[times.length - 1];
    const half = Math.min((max - min) / 2 * factor, (last - first) / 2), shift = later * (max - min);
    const middle = Math.max(first + half, Math.min(last - half, (min + max) / 2 + shift));
    chart.setScale("x", { min: middle - half, max: middle + half });
  }
}

/** Buttons that do by keys what dragging does by mouse. */
function prepareZoom(group, ids) {
  const moves = { closer: [0.5, 0], wider: [2, 0], earlier: [1, -0.5], later: [1, 0.5], all: [1e9, 0] };
  for (const button of group.querySelectorAll("button[data-move]")) {
    button.addEventListener("click", () => moveCharts(ids, ...moves[button.dataset.move]));
  }
}

/** Value of a line in the legend. */
const legendValue = words => (_, v) => v === null || v === undefined ? DASH : words(v);

/**
 * Columns and lines of stacked areas: each drawn from zero to the sum up to it, the uppermost first, so that the parts
 * show. Negative parts stack downwards.
 *
 * @param {{label: string, values: number[], colour: string}[]} parts what is stacked
 */
function stacked(parts, words) {
  const columns = [], lines = [], up = parts.length ? parts[0].values.map(() => 0) : [], down = up.slice();
  const sums = parts.map(part => part.values.map((v, i) => v >= 0 ? (up[i] += v) : (down[i] += v)));
  for (let k = parts.length - 1; k >= 0; k--) {
    const part = parts[k];
    columns.push(sums[k]);
    lines.push({ label: part.label, stroke: ink("ink"), width: 0.6, fill: part.colour, points: { show: false },
      value: (u, v, s, i) => i === null || i === undefined ? DASH : words(part.values[i]) });
  }
  return { columns, lines };
}
