// Interference: colours behind the numbers of the tables, and what each bore does at a site over time.

const MOST_SHARES = 7;

/** Colours the cells of a table of interference by how much drawdown they hold. */
function shadeInterference() {
  for (const table of document.querySelectorAll('table[id^="interference-"]')) {
    const cells = Array.from(table.tBodies[0].rows, row => Array.from(row.cells).slice(1, +table.dataset.causes + 1)).flat();
    const most = Math.max(1e-9, ...cells.map(cell => Math.abs(+cell.dataset.value || 0)));
    for (const cell of cells) {
      const share = (+cell.dataset.value || 0) / most;
      if (Math.abs(share) < 0.002) continue;
      const colour = mix(share > 0 ? OCHRES : BLUES, Math.sqrt(Math.abs(share)));
      cell.style.background = rgb(colour);
      cell.style.color = inkOn(colour);
    }
  }
}

/** What each bore or spring, or each holder with all bores, has done at a station on the recorded days. */
function sharesAt(station) {
  const count = responses.days.length, byHolder = byId("share-by").value === "holder", groups = new Map();
  report.whatIf.takers.forEach((taker, cause) => {
    const label = byHolder && taker.holder ? taker.holder : report.whatIf.stations[cause];
    if (!groups.has(label)) groups.set(label, { label, values: new Array(count).fill(0) });
    const share = shareOf(cause), values = groups.get(label).values;
    for (let i = 0; i < count; i++) values[i] += share[station * count + i];
  });
  const parts = Array.from(groups.values()), size = part => part.values.reduce((sum, v) => sum + Math.abs(v), 0);
  return parts.map(part => ({ ...part, size: size(part) })).sort((a, b) => b.size - a.size);
}

/** Draws what each cause has done at a site over time: the largest apart, the rest together. */
function drawShares() {
  const name = byId("share-site").value, station = report.whatIf.stations.indexOf(name), count = responses.days.length;
  const parts = sharesAt(station), shown = parts.slice(0, MOST_SHARES), rest = parts.slice(MOST_SHARES);
  if (rest.length) shown.push({ label: "all others", values: shown[0].values.map((_, i) => rest.reduce((sum, part) => sum + part.values[i], 0)) });
  shown.forEach((part, i) => {
    part.label = shortName(part.label);
    part.values = part.values.map(inHeightUnit);
    part.colour = i < MOST_SHARES ? ink(LINE_COLOURS[i] + "-area") : ink("line");
  });
  const words = v => numberWords(v, heightDecimals()) + " " + heightUnit(), { columns, lines } = stacked(shown, words);
  const head = series.get(name).head, total = Array.from(head, v => Number.isNaN(v) ? null : inHeightUnit(head[0] - v));
  lines.push({ label: "drawdown of the run", stroke: ink("ink"), width: 2, dash: [6, 4], points: { show: false }, value: legendValue(words) });
  putChart("shares", chartOptions(byId("shares"), 340, "Drawdown since the start at " + shortName(name), heightUnit(), lines),
    [responses.days.map(day => START + day * DAY), ...columns, total]);
  const last = count - 1, sum = shown.reduce((all, part) => all + part.values[last], 0);
  byId("shares-caption").textContent = "At the end: " + shown.filter(part => Math.abs(part.values[last]) >= 0.01)
    .map(part => part.label + " " + words(part.values[last])).join(", ") + "; together " + words(sum)
    + ", against " + words(total[last]) + " in the run. Areas below zero are water that is given back or no longer flows by itself.";
}

function prepareShares() {
  if (!report.whatIf) return;
  const site = byId("share-site"), effect = byId("map-effect");
  site.append(...report.whatIf.stations.map(name => option(shortName(name), name)));
  byId("share-by").append(option("holder", "holder"), option("bore", "bore"));
  if (!report.whatIf.takers.some(taker => taker.holder)) byId("share-by").value = "bore";
  byId("share-by").addEventListener("change", drawShares);
  const wanted = report.limits.find(limit => limit.verdict === "CROSSED") || report.limits[0];
  if (wanted && report.whatIf.stations.includes(wanted.site)) site.value = wanted.site;
  site.addEventListener("change", drawShares);
  effect.append(option("no bore", ""), ...report.whatIf.takers.map((_, cause) => option(shortName(report.whatIf.stations[cause]), cause)));
  effect.addEventListener("change", () => { map.effectOf = effect.value === "" ? null : +effect.value; drawMap(true); });
  prepareZoom(byId("shares-zoom"), ["shares"]);
  unitListeners.push(drawShares);
  drawShares();
}
