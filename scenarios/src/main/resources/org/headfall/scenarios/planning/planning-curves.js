// Curves over spacing, by uPlot, with the spacing of least cost marked.

let chart = null;

/** Width of a letter of an axis (px), rather too much. */
const LETTER = 7;

/** Width of the space between thousands (px), rather too much. */
const THIN_SPACE = 4;

const chosenCurves = () => plan.curves.curves.filter(curve => curve.layout === byId("curves-layout").value);

/** Rings at the spacing of least cost of every curve. */
function markBest(u) {
  const measure = +byId("curves-measure").value;
  chosenCurves().forEach((curve, k) => {
    if (!u.series[k + 1].show) return;
    const x = u.valToPos(curve.bestSpacing, "x", true), y = u.valToPos(curve.best[measure], "y", true);
    u.ctx.save();
    u.ctx.setLineDash([]);
    u.ctx.beginPath();
    u.ctx.arc(x, y, 6 * devicePixelRatio, 0, 2 * Math.PI);
    u.ctx.fillStyle = ink("paper"); u.ctx.fill();
    u.ctx.lineWidth = 2.5 * devicePixelRatio; u.ctx.strokeStyle = ink(LINE_COLOURS[k % LINE_COLOURS.length]); u.ctx.stroke();
    u.ctx.restore();
  });
}

function drawCurves() {
  const box = byId("curves"), measure = +byId("curves-measure").value, curves = chosenCurves();
  if (chart) chart.destroy();
  const axis = extra => ({ stroke: ink("ink"), grid: { stroke: ink("line"), width: 1 }, ticks: { stroke: ink("line") },
    font: "12px system-ui, sans-serif", labelFont: "12px system-ui, sans-serif", labelSize: 18, ...extra });
  const ticks = (u, splits) => {
    let taken = -Infinity;
    return splits.map(v => {
      const text = words(v, v < 10 ? 2 : 0).replace(/\.00$/, ""), half = (LETTER * text.replace("\u202f", "").length + (v < 1000 ? 0 : THIN_SPACE)) / 2, at = u.valToPos(v, "x");
      if (at - half < taken) return "";
      taken = at + half + LETTER;
      return text;
    });
  };
  const series = curves.map((curve, k) => ({ label: curve.bores + " bores", stroke: ink(LINE_COLOURS[k % LINE_COLOURS.length]), width: 2,
    dash: LINE_DASHES[k % LINE_DASHES.length], points: { show: false }, value: (_, v) => v === null || v === undefined ? "\u2013" : words(v, 2) }));
  const round = plan.curves.spacings.flatMap(s => { const p = 10 ** Math.floor(Math.log10(s)); return [p, 2 * p, 5 * p]; });
  const within = [...new Set(round)].sort((a, b) => a - b)
    .filter(s => s >= plan.curves.spacings[0] * 0.999 && s <= plan.curves.spacings.at(-1) * 1.001);
  chart = new uPlot({ width: Math.max(240, box.clientWidth), height: 380, padding: [null, 3 * LETTER, null, null],
    series: [{ label: "Spacing (m)", value: (_, v) => v === null || v === undefined ? "\u2013" : words(v, 0) }, ...series],
    scales: { x: { time: false, distr: 3, range: () => [plan.curves.spacings[0] * 0.94, plan.curves.spacings.at(-1) * 1.06] }, y: { range: (_, low, high) => { const rim = 0.06 * (high - low || Math.abs(high) || 1); return [low - rim, high + rim]; } } },
    axes: [axis({ label: "Spacing (m)", splits: () => within, filter: (_, splits) => splits, values: ticks }),
      axis({ size: 66, label: plan.curves.measures[measure], values: (_, splits) => splits.map(v => words(v, Math.abs(v) < 10 ? 2 : Math.abs(v) < 100 ? 1 : 0)) })],
    cursor: { drag: { x: false, y: false } }, hooks: { draw: [markBest] },
  }, [plan.curves.spacings, ...curves.map(curve => curve.values[measure])], box);
  const marked = curves.map(curve => curve.bores + " bores: " + words(curve.bestSpacing, 0) + " m" + (curve.atEnd ? " (the end of the range)" : ""));
  byId("curves-caption").textContent = "Distance of neighbouring bores on a logarithmic axis. Rings mark the spacing of least cost: "
    + marked.join(", ") + ".";
}

function showCurves() {
  choice(byId("curves-measure"), plan.curves.measures.map((measure, k) => [k, measure]));
  choice(byId("curves-layout"), [...new Set(plan.curves.curves.map(curve => curve.layout))].map(layout => [layout, layout]));
  for (const id of ["curves-measure", "curves-layout"]) byId(id).addEventListener("change", drawCurves);
  drawCurves();
}
