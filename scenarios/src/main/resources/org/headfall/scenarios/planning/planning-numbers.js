// Curves over the number of bores, by uPlot, each layout and number at its spacing of least cost.

let numbersChart = null;

const counts = () => [...new Set(plan.curves.curves.map(curve => curve.bores))].sort((a, b) => a - b);

/** What a layout of so many bores gives at its spacing of least cost; the last measure is that spacing. */
function atLeastCost(layout, bores, measure) {
  const curve = plan.curves.curves.find(one => one.layout === layout && one.bores === bores);
  if (!curve) return null;
  return measure < curve.best.length ? curve.best[measure] : curve.bestSpacing;
}

function drawNumbers() {
  const box = byId("numbers"), measure = +byId("numbers-measure").value, numbers = counts();
  if (numbersChart) numbersChart.destroy();
  const layouts = [...new Set(plan.curves.curves.map(curve => curve.layout))];
  const axis = extra => ({ stroke: ink("ink"), grid: { stroke: ink("line"), width: 1 }, ticks: { stroke: ink("line") },
    font: "12px system-ui, sans-serif", labelFont: "12px system-ui, sans-serif", labelSize: 18, ...extra });
  const series = layouts.map((layout, k) => ({ label: layout, stroke: ink(LINE_COLOURS[k % LINE_COLOURS.length]), width: 2, spanGaps: true,
    dash: LINE_DASHES[k % LINE_DASHES.length], points: { show: true, size: 7 }, value: (_, v) => v === null || v === undefined ? "\u2013" : words(v, 2) }));
  numbersChart = new uPlot({ width: Math.max(240, box.clientWidth), height: 380,
    series: [{ label: "Bores", value: (_, v) => v === null || v === undefined ? "\u2013" : words(v, 0) }, ...series],
    scales: { x: { time: false, range: () => [numbers[0] - 0.5, numbers.at(-1) + 0.5] }, y: { range: (_, low, high) => { const rim = 0.06 * (high - low || Math.abs(high) || 1); return [low - rim, high + rim]; } } },
    axes: [axis({ label: "Number of bores", splits: () => numbers, filter: (_, splits) => splits, values: (_, splits) => splits.map(v => words(v, 0)) }),
      axis({ size: 66, label: byId("numbers-measure").selectedOptions[0].textContent, values: (_, splits) => splits.map(v => words(v, Math.abs(v) < 10 ? 2 : Math.abs(v) < 100 ? 1 : 0)) })],
    cursor: { drag: { x: false, y: false } },
  }, [numbers, ...layouts.map(layout => numbers.map(bores => atLeastCost(layout, bores, measure)))], box);
}

function showNumbers() {
  choice(byId("numbers-measure"), [...plan.curves.measures, "Spacing of least cost (m)"].map((measure, k) => [k, measure]));
  byId("numbers-measure").addEventListener("change", drawNumbers);
  drawNumbers();
}
