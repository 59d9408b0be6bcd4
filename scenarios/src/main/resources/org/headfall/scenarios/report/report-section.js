// The section along a line, twice: heads and ground alone, where metres count, and below it everything down to the bottom
// of the aquifer.

const section = { canvas: byId("section"), line: report.sections[0] || null, drawing: null };

/** The heads that are drawn: at the start, at the end, and at the date of the map between them. */
function sectionHeads() {
  const last = field.dates.length - 1;
  const heads = [{ key: "start", date: 0, colour: "start", dash: [8, 5] }];
  if (map.date !== 0 && map.date !== last) heads.push({ key: "then", date: map.date, colour: "water", dash: [] });
  if (last > 0) heads.push({ key: "end", date: last, colour: map.date === last ? "water" : "quiet", dash: map.date === last ? [] : [2, 3] });
  return heads;
}

/** Samples at even distances, and closer where the line comes near a bore, unless only even ones are wanted. */
function sectionSamples(count, evenly) {
  const line = section.line, length = Math.hypot(line.toX - line.fromX, line.toY - line.fromY), heads = sectionHeads();
  const cones = conesAlong(length), even = Array.from({ length: count }, (_, i) => i / (count - 1) * length);
  const closer = evenly ? [] : cones.flatMap(cone => CONE_STEPS.flatMap(step => [cone.along - step * cone.reach, cone.along + step * cone.reach]));
  const distances = Array.from(new Set(even.concat(closer))).filter(d => d >= 0 && d <= length).sort((a, b) => a - b);
  return distances.map(distance => {
    const share = distance / length, x = line.fromX + share * (line.toX - line.fromX), y = line.fromY + share * (line.toY - line.fromY);
    const at = values => values ? valueAt(values, x, y) : NaN;
    const headAt = date => headInCone(cones, x, y, at(field.heads[date]), date);
    const sample = { distance, ground: at(field.ground), top: at(field.top), bottom: at(field.bottom) };
    for (const head of heads) sample[head.key] = headAt(head.date);
    sample.shown = headAt(map.date);
    return sample;
  });
}

/** Distances from a bore at which its cone is drawn, as parts of its reach. */
const CONE_STEPS = [0, 0.0005, 0.002, 0.01, 0.04, 0.12, 0.3, 0.6];

/** Radius that the wall of a bore is drawn at (m). */
const WALL = 0.1;

/** Bores that the line passes within a cell: close to them heads of cells are not those of the aquifer. */
function conesAlong(length) {
  const width = (centres, value) => centres.length > 1 ? centres[locate(centres, value)[0] + 1] - centres[locate(centres, value)[0]] : 0;
  return sitesAlong(length).filter(({ site }) => site.kind.endsWith("BORE") && series.has(site.name))
    .map(near => ({ ...near, reach: Math.max(width(field.x, near.site.x), width(field.y, near.site.y)) }))
    .filter(cone => cone.aside < cone.reach && cone.reach > WALL);
}

/** Head within a cell of the nearest bore: down to that at its wall with the logarithm of distance (Thiem 1906). */
function headInCone(cones, x, y, head, date) {
  const distance = ({ site }) => Math.hypot(site.x - x, site.y - y);
  const cone = d3.least(cones, distance);
  if (!cone || distance(cone) >= cone.reach) return head;
  const record = series.get(cone.site.name), wall = seriesAt(record.days, record.head, dayOfIso(field.dates[date]));
  const share = Math.log(Math.max(WALL, distance(cone)) / WALL) / Math.log(cone.reach / WALL);
  return Number.isFinite(wall) ? wall + share * (head - wall) : head;
}

/** Part of a line along which a condition holds for its samples. */
function partOfLine(samples, holds) {
  let part = 0;
  for (let i = 1; i < samples.length; i++) {
    part += (samples[i].distance - samples[i - 1].distance) * (holds(samples[i - 1]) + holds(samples[i])) / 2;
  }
  return part / samples[samples.length - 1].distance;
}

/** Sites close to the line, at their place along it. */
function sitesAlong(length) {
  const line = section.line, ux = (line.toX - line.fromX) / length, uy = (line.toY - line.fromY) / length;
  return report.sites.map(site => ({ site, along: (site.x - line.fromX) * ux + (site.y - line.fromY) * uy,
    aside: Math.abs((site.x - line.fromX) * uy - (site.y - line.fromY) * ux) }))
    .filter(near => near.along >= 0 && near.along <= length && near.aside <= Math.min(length / 20, 2000))
    .sort((a, b) => a.along - b.along);
}

/** Scales of one of the two drawings, between an upper and a lower edge (px), for some levels. */
function sectionView(samples, width, [topEdge, base], levels) {
  const low = d3.min(levels), high = d3.max(levels), rim = Math.max(0.5, 0.06 * (high - low));
  const bottom = low - rim, top = high + rim, ticks = d3.ticks(bottom, top, Math.max(3, Math.round((base - topEdge) / 45)));
  const left = 60, right = width - 12, length = samples[samples.length - 1].distance;
  return { context: section.canvas.getContext("2d"), samples, width, ticks, length, left, right, topEdge, base,
    px: d => left + d / length * (right - left), py: level => topEdge + (top - level) / (top - bottom) * (base - topEdge),
    exaggeration: (base - topEdge) / (top - bottom) / ((right - left) / length) };
}

/** Draws inside the edges of a view only. */
function clipped({ context, left, right, topEdge, base }, draw) {
  context.save(); context.beginPath(); context.rect(left, topEdge, right - left, base - topEdge); context.clip();
  draw();
  context.restore();
}

function drawSection() {
  if (!section.line || !field.heads.length) return;
  const width = Math.max(240, section.canvas.parentElement.clientWidth), height = isPrinted() ? 365 : width < 500 ? 520 : 640;
  const samples = sectionSamples(Math.min(700, width)), length = samples[samples.length - 1].distance, ratio = window.devicePixelRatio || 1;
  section.canvas.width = width * ratio; section.canvas.height = height * ratio;
  section.canvas.style.height = height + "px";
  const context = section.canvas.getContext("2d"), near = sitesAlong(length), keys = ["ground", ...sectionHeads().map(head => head.key)];
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = ink("paper"); context.fillRect(0, 0, width, height);
  const levels = keys => samples.flatMap(s => keys.map(key => s[key])).filter(Number.isFinite);
  const closer = levels(keys).concat(near.map(({ site }) => levelOf(site)).filter(Number.isFinite)), middle = Math.round(height * 0.52);
  const upper = sectionView(samples, width, [30, middle], closer);
  const lower = sectionView(samples, width, [middle + 34, height - 34], levels([...keys, "top", "bottom"]));
  for (const view of [upper, lower]) {
    clipped(view, () => sectionBodies(view));
    sectionAxes(view);
    clipped(view, () => {
      near.forEach(place => sectionSite(view, place));
      for (const head of sectionHeads()) sectionLine(view, head.key, ink(head.colour), head.dash);
    });
  }
  sectionNames(upper, near);
  sectionWords(samples, upper.exaggeration, lower.exaggeration);
}

function sectionBodies(view) {
  band(view, "ground", "top", ink("bed"));
  band(view, "top", "bottom", ink("rock"));
  dotted(view, "top", "bottom");
  sectionLine(view, "ground", ink("ground"), [], 3);
  sectionLine(view, "top", ink("ink"), [], 1);
  sectionLine(view, "bottom", ink("ink"), [], 1);
  if (field.ground) artesianZone(view);
}

function bodyPath({ context, samples, px, py }, upper, lower) {
  context.beginPath();
  samples.forEach((s, i) => i ? context.lineTo(px(s.distance), py(s[upper])) : context.moveTo(px(s.distance), py(s[upper])));
  for (let i = samples.length - 1; i >= 0; i--) context.lineTo(px(samples[i].distance), py(samples[i][lower]));
  context.closePath();
}

const whole = (samples, upper, lower) => samples.every(s => Number.isFinite(s[upper]) && Number.isFinite(s[lower]));

function band(view, upper, lower, colour) {
  if (!whole(view.samples, upper, lower)) return;
  bodyPath(view, upper, lower);
  view.context.fillStyle = colour; view.context.fill();
}

/** Dots in the aquifer, so that it is told from the bed without colour. */
function dotted(view, upper, lower) {
  if (!whole(view.samples, upper, lower)) return;
  const { context, width, topEdge, base } = view;
  context.save(); bodyPath(view, upper, lower); context.clip();
  context.fillStyle = ink("ink"); context.globalAlpha = 0.35;
  for (let y = topEdge + 4; y < base; y += 9) for (let x = Math.round((y - topEdge) / 9) % 2 ? 4 : 9; x < width; x += 10) context.fillRect(x, y, 1.3, 1.3);
  context.restore();
}

/** Where the head stands above ground, the space between is hatched: there water rises by itself. */
function artesianZone({ context, samples, px, py, width, base }) {
  context.save(); context.beginPath();
  for (let i = 1; i < samples.length; i++) {
    const a = samples[i - 1], b = samples[i];
    if (!(a.shown > a.ground && b.shown > b.ground)) continue;
    context.moveTo(px(a.distance), py(a.shown)); context.lineTo(px(b.distance), py(b.shown));
    context.lineTo(px(b.distance), py(b.ground)); context.lineTo(px(a.distance), py(a.ground)); context.closePath();
  }
  context.clip(); context.strokeStyle = ink("water"); context.lineWidth = 1; context.beginPath();
  for (let x = -base; x < width; x += 7) { context.moveTo(x, base); context.lineTo(x + base, 0); }
  context.stroke(); context.restore();
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

function sectionAxes({ context, px, py, left, right, topEdge, base, ticks, length, width }) {
  context.font = "12px system-ui, sans-serif"; context.fillStyle = ink("ink"); context.strokeStyle = ink("line"); context.lineWidth = 1;
  context.textAlign = "right";
  for (const tick of ticks) {
    if (py(tick) > base || py(tick) < topEdge) continue;
    context.globalAlpha = 0.5; context.beginPath(); context.moveTo(left, py(tick)); context.lineTo(right, py(tick)); context.stroke();
    context.globalAlpha = 1;
    context.fillText(minus(String(tick)) + " m", left - 6, py(tick) + 4);
  }
  context.textAlign = "center";
  for (const tick of d3.ticks(0, length / 1000, width < 500 ? 4 : 8)) {
    context.fillText(String(tick), px(tick * 1000), base + 16);
    context.beginPath(); context.moveTo(px(tick * 1000), base); context.lineTo(px(tick * 1000), base + 4); context.stroke();
  }
  context.fillText("km from A", (left + right) / 2, base + 30);
  context.font = "600 12px system-ui, sans-serif";
  context.fillText("A", left, base + 30); context.fillText("B", right - 4, base + 30);
}

/** Level inside a bore at the date of the map, where it was recorded. */
function levelOf(site) {
  const record = series.get(site.name);
  return record ? seriesAt(record.days, record.level, dayOfIso(field.dates[map.date])) : NaN;
}

/** Names of the sites above the upper drawing, where they find room. */
function sectionNames({ context, px, left, right, topEdge }, near) {
  let end = -99;
  context.font = "600 12px system-ui, sans-serif"; context.fillStyle = ink("ink"); context.textAlign = "left";
  for (const { site, along } of near) {
    const text = shortName(site.name), wide = context.measureText(text).width, start = Math.max(left, Math.min(px(along) - 4, right - wide));
    if (start < end + 10) continue;
    context.fillText(text, start, topEdge - 10);
    end = start + wide;
  }
}

function sectionSite(view, { site, along, aside }) {
  const x = view.px(along);
  const ground = site.ground !== null ? site.ground : valueAt(field.ground || field.heads[0], site.x, site.y);
  if (site.kind.endsWith("BORE")) {
    if (aside > WALL) coneBeside(view, site, along);
    sectionBore(view, site, x, ground);
  }
  symbol(view.context, site.kind, site.states[map.date][0], x, view.py(ground), isCrossed(site, map.date));
}

/** From the head on the line down to the level in a bore beside it: its cone is there, though the line misses its depth. */
function coneBeside({ context, samples, px, py }, site, along) {
  const level = levelOf(site), head = d3.least(samples, sample => Math.abs(sample.distance - along)).shown;
  if (!Number.isFinite(level) || !Number.isFinite(head)) return;
  context.strokeStyle = ink("water"); context.lineWidth = 1.6; context.setLineDash([2, 3]);
  context.beginPath(); context.moveTo(px(along), py(head)); context.lineTo(px(along), py(level)); context.stroke();
  context.setLineDash([]);
}

/** Casing to the top of the aquifer, screen through it, pump, and the level inside. */
function sectionBore({ context, px, py }, site, x, ground) {
  const foot = field.bottom ? valueAt(field.bottom, site.x, site.y) : site.top, top = site.top === null ? foot : site.top;
  context.strokeStyle = ink("ink"); context.lineWidth = 1.6;
  context.beginPath(); context.moveTo(x, py(ground)); context.lineTo(x, py(top)); context.stroke();
  context.setLineDash([2, 2]); context.lineWidth = 4;
  context.beginPath(); context.moveTo(x, py(top)); context.lineTo(x, py(foot)); context.stroke();
  context.setLineDash([]);
  if (site.intake !== null) { context.fillStyle = ink("ink"); context.fillRect(x - 4, py(site.intake) - 4, 8, 8); }
  const level = levelOf(site);
  if (!Number.isFinite(level)) return;
  const y = py(level);
  context.fillStyle = ink("water"); context.strokeStyle = ink("paper"); context.lineWidth = 1;
  context.beginPath(); context.moveTo(x - 6, y - 8); context.lineTo(x + 6, y - 8); context.lineTo(x, y); context.closePath();
  context.fill(); context.stroke();
}

function sectionWords(samples, closer, whole) {
  const share = key => Math.round(partOfLine(samples, s => s[key] > s.ground) * 100) + "\u00a0%";
  const times = exaggeration => exaggeration >= 10 ? Math.round(exaggeration) : exaggeration.toPrecision(2);
  byId("section-caption").textContent = section.line.name + ". Heights are drawn " + times(closer) + " times larger than lengths above and "
    + times(whole) + " times below. "
    + (field.ground ? "Hatching shows where water rises above ground on " + dateWords(field.dates[map.date]) + ": along "
      + share("shown") + " of the line, against " + share("start") + " on " + dateWords(field.dates[0]) + ". " : "")
    + "Heads run to the walls of bores, dotted to those beside the line, up to "
    + numberWords(Math.min(samples[samples.length - 1].distance / 20, 2000) / 1000, 1) + " km. Screens are drawn through the aquifer.";
  sectionLegend();
  const heads = sectionHeads(), few = sectionSamples(13, true), digits = v => Number.isFinite(v) ? minus(v.toFixed(1)) : DASH;
  fillTable(byId("section-table"), "Levels along " + section.line.name,
    ["Distance (km)", "Ground (m)", "Top of aquifer (m)", "Bottom of aquifer (m)", ...heads.map(head => "Head on " + dateWords(field.dates[head.date]) + " (m)")],
    few.map(s => [(s.distance / 1000).toFixed(1), ...[s.ground, s.top, s.bottom, ...heads.map(head => s[head.key])].map(digits)]));
}

function sectionLegend() {
  const item = (words, draw) => {
    const made = element("li"), canvas = element("canvas", null, { width: 72, height: 44, "aria-hidden": "true" }), context = canvas.getContext("2d");
    context.scale(2, 2); draw(context); made.append(canvas, words);
    return made;
  };
  const stroke = (colour, dash, width) => context => {
    context.strokeStyle = ink(colour); context.lineWidth = width || 2.4; context.setLineDash(dash);
    context.beginPath(); context.moveTo(2, 11); context.lineTo(34, 11); context.stroke();
  };
  const fill = (colour, dots) => context => {
    context.fillStyle = ink(colour); context.fillRect(2, 3, 30, 16);
    context.fillStyle = ink("ink");
    if (dots) for (let k = 0; k < 6; k++) context.fillRect(5 + 5 * k, k % 2 ? 8 : 13, 1.4, 1.4);
  };
  byId("section-legend").replaceChildren(
    item("ground", stroke("ground", [], 3)), item("sealing bed and above", fill("bed")), item("aquifer", fill("rock", true)),
    ...sectionHeads().map(head => item("head on " + dateWords(field.dates[head.date]), stroke(head.colour, head.dash))),
    item("level in the bore", context => { context.fillStyle = ink("water"); context.beginPath(); context.moveTo(11, 5); context.lineTo(23, 5); context.lineTo(17, 15); context.fill(); }),
    item("pump", context => { context.fillStyle = ink("ink"); context.fillRect(13, 6, 9, 9); }));
}
