// The section: ground, sealing bed, aquifer and heads along a line.

const section = { canvas: document.getElementById("section"), line: report.sections[0] || null };

function sectionSamples(count) {
  const line = section.line, length = Math.hypot(line.toX - line.fromX, line.toY - line.fromY);
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1), x = line.fromX + share * (line.toX - line.fromX), y = line.fromY + share * (line.toY - line.fromY);
    const at = values => values ? valueAt(values, x, y) : NaN;
    return { distance: share * length, ground: at(field.ground), top: at(field.top), bottom: at(field.bottom),
      start: at(field.heads[0]), then: at(field.heads[map.date]) };
  });
}

/** Bores within a twentieth of the line's length from it, at their place along it. */
function sitesAlong(length) {
  const line = section.line, ux = (line.toX - line.fromX) / length, uy = (line.toY - line.fromY) / length;
  return report.sites.map(site => ({ site, along: (site.x - line.fromX) * ux + (site.y - line.fromY) * uy,
    aside: Math.abs((site.x - line.fromX) * uy - (site.y - line.fromY) * ux) }))
    .filter(near => near.along >= 0 && near.along <= length && near.aside <= length / 20);
}

function drawSection() {
  if (!section.line) return;
  const width = Math.max(240, section.canvas.parentElement.clientWidth), height = Math.round(Math.max(300, Math.min(440, width * 0.5)));
  const ratio = window.devicePixelRatio || 1, context = section.canvas.getContext("2d");
  section.canvas.width = width * ratio; section.canvas.height = height * ratio;
  section.canvas.style.height = height + "px";
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  const samples = sectionSamples(Math.min(600, width)), length = samples[samples.length - 1].distance;
  const levels = samples.flatMap(s => [s.ground, s.bottom, s.top, s.start, s.then]).filter(Number.isFinite);
  const ticks = d3.ticks(d3.min(levels), d3.max(levels), 7), step = ticks[1] - ticks[0];
  const low = Math.floor(d3.min(levels) / step) * step, high = d3.max(levels) + 0.45 * step;
  const left = 52, right = width - 12, topEdge = 14, base = height - 34;
  const px = d => left + d / length * (right - left), py = level => topEdge + (high - level) / (high - low) * (base - topEdge);
  const view = { context, samples, px, py, left, right, topEdge, base };
  context.fillStyle = ink("paper"); context.fillRect(0, 0, width, height);
  sectionBodies(view);
  sectionAxes(view, ticks, length, width);
  sectionBores(view, length);
  sectionLine(view, "start", ink("start"), [8, 5]);
  sectionLine(view, "then", ink("water"), []);
  const exaggeration = (base - topEdge) / (high - low) / ((right - left) / length);
  sectionWords(samples, exaggeration);
}

function sectionBodies(view) {
  band(view, "ground", "top", ink("bed"));
  band(view, "top", "bottom", ink("rock"));
  sectionLine(view, "ground", ink("ground"), [], 3);
  sectionLine(view, "top", ink("ink"), [], 1);
  sectionLine(view, "bottom", ink("ink"), [], 1);
  if (field.ground) artesianZone(view);
}

/** Where the head stands above ground, the space between is hatched: there water rises by itself. */
function artesianZone({ context, samples, px, py }) {
  context.save(); context.beginPath();
  for (let i = 1; i < samples.length; i++) {
    const a = samples[i - 1], b = samples[i];
    if (!(a.then > a.ground && b.then > b.ground)) continue;
    context.moveTo(px(a.distance), py(a.then)); context.lineTo(px(b.distance), py(b.then));
    context.lineTo(px(b.distance), py(b.ground)); context.lineTo(px(a.distance), py(a.ground)); context.closePath();
  }
  context.clip(); context.strokeStyle = ink("water"); context.lineWidth = 1; context.beginPath();
  for (let x = -2000; x < 3000; x += 7) { context.moveTo(x, 900); context.lineTo(x + 900, 0); }
  context.stroke(); context.restore();
}

function band({ context, samples, px, py }, upper, lower, colour) {
  if (!samples.every(s => Number.isFinite(s[upper]) && Number.isFinite(s[lower]))) return;
  context.beginPath();
  samples.forEach((s, i) => i ? context.lineTo(px(s.distance), py(s[upper])) : context.moveTo(px(s.distance), py(s[upper])));
  for (let i = samples.length - 1; i >= 0; i--) context.lineTo(px(samples[i].distance), py(samples[i][lower]));
  context.closePath(); context.fillStyle = colour; context.fill();
}

function sectionLine({ context, samples, px, py }, key, colour, dash, width) {
  context.beginPath();
  let pen = false;
  for (const s of samples) {
    if (!Number.isFinite(s[key])) { pen = false; continue; }
    if (pen) context.lineTo(px(s.distance), py(s[key])); else context.moveTo(px(s.distance), py(s[key]));
    pen = true;
  }
  context.setLineDash(dash); context.lineWidth = width || 2.4; context.strokeStyle = colour; context.stroke(); context.setLineDash([]);
}

function sectionAxes({ context, px, py, left, right, topEdge, base }, ticks, length, width) {
  context.font = "12px system-ui, sans-serif"; context.fillStyle = ink("ink"); context.strokeStyle = ink("line"); context.lineWidth = 1;
  context.textAlign = "right";
  for (const tick of ticks) {
    if (py(tick) > base || py(tick) < topEdge) continue;
    context.globalAlpha = 0.5; context.beginPath(); context.moveTo(left, py(tick)); context.lineTo(right, py(tick)); context.stroke(); context.globalAlpha = 1;
    context.fillText(minus(String(tick)), left - 6, py(tick) + 4);
  }
  context.fillText("m", left - 6, topEdge - 2);
  context.textAlign = "center";
  for (const tick of d3.ticks(0, length / 1000, width < 500 ? 4 : 8)) {
    context.fillText(String(tick), px(tick * 1000), base + 16);
    context.beginPath(); context.moveTo(px(tick * 1000), base); context.lineTo(px(tick * 1000), base + 4); context.stroke();
  }
  context.fillText("km along the line", (left + right) / 2, base + 30);
}

function sectionBores({ context, px, py, topEdge }, length) {
  context.font = "600 12px system-ui, sans-serif";
  let lastLabel = -99;
  for (const { site, along } of sitesAlong(length).sort((a, b) => a.along - b.along)) {
    const ground = Number.isFinite(site.ground) && site.ground !== null ? site.ground : valueAt(field.ground || field.heads[0], site.x, site.y);
    const x = px(along), bore = site.kind.endsWith("BORE");
    if (bore) {
      const foot = field.bottom ? valueAt(field.bottom, site.x, site.y) : site.top;
      context.strokeStyle = ink("ink"); context.lineWidth = 1.6; context.beginPath(); context.moveTo(x, py(ground)); context.lineTo(x, py(site.top === null ? foot : site.top)); context.stroke();
      if (foot !== null && site.top !== null) { context.setLineDash([2, 2]); context.lineWidth = 4; context.beginPath(); context.moveTo(x, py(site.top)); context.lineTo(x, py(foot)); context.stroke(); context.setLineDash([]); }
      if (site.intake !== null) { context.fillStyle = ink("ink"); context.fillRect(x - 4, py(site.intake) - 3, 8, 6); }
    }
    symbol(context, site.kind, site.states[map.date][0], x, py(ground));
    if (x - lastLabel > 90) {
      context.fillStyle = ink("ink"); context.textAlign = x > 0.8 * context.canvas.clientWidth ? "right" : "left";
      context.fillText(shortName(site.name), x + (context.textAlign === "left" ? 4 : -4), topEdge + 8);
      lastLabel = x;
    }
  }
}

function sectionWords(samples, exaggeration) {
  const artesian = samples.filter(s => s.then > s.ground).length, before = samples.filter(s => s.start > s.ground).length;
  const share = n => Math.round(n / samples.length * 100) + " %";
  document.getElementById("section-caption").textContent = section.line.name + ". Heights are drawn " + Math.round(exaggeration)
    + " times larger than lengths. Solid blue: head on " + dateWords(field.dates[map.date]) + "; dashed: head on " + dateWords(field.dates[0])
    + ". Hatching shows where water rises above ground" + (field.ground ? ": " + share(before) + " of the line on "
      + dateWords(field.dates[0]) + ", " + share(artesian) + " on " + dateWords(field.dates[map.date]) + "." : ".");
  const items = [["ground", "ground level"], ["bed", "sealing bed"], ["rock", "aquifer"], ["start", "head at the start (dashed)"], ["water", "head at the chosen date"]];
  document.getElementById("section-legend").replaceChildren(...items.map(([name, words]) => {
    const item = element("li"), swatch = element("i");
    swatch.style.background = "var(--" + name + ")";
    item.append(swatch, words);
    return item;
  }));
  const few = sectionSamples(13);
  fillTable(document.getElementById("section-table"), "Levels along " + section.line.name,
    ["Distance (km)", "Ground (m)", "Top of aquifer (m)", "Bottom of aquifer (m)", "Head on " + dateWords(field.dates[0]) + " (m)", "Head on " + dateWords(field.dates[map.date]) + " (m)"],
    few.map(s => [(s.distance / 1000).toFixed(1), ...[s.ground, s.top, s.bottom, s.start, s.then].map(v => Number.isFinite(v) ? minus(v.toFixed(1)) : "\u2013")]));
}
