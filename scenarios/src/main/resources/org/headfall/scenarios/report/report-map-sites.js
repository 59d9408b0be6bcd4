// Bores, springs and points on the map: symbols, names, crossed limits, what one bore does, and shapes of the reader.

const STATE_FILLS = { RUNNING: "#14181a", FLOWING: "#1769a0", CUT_BACK: "#e9b000", STOPPED: "#fff", SHUT: "#9aa0a2", WATCHED: "#fff" };

/** Outline of a kind of site about a place. */
function outline(context, kind, px, py) {
  const r = 6;
  context.beginPath();
  if (kind === "PUMPED_BORE") context.arc(px, py, r, 0, 7);
  else if (kind === "SPRING") {
    context.moveTo(px, py - r - 3);
    context.quadraticCurveTo(px + r + 3, py + r, px, py + r); context.quadraticCurveTo(px - r - 3, py + r, px, py - r - 3);
  } else if (kind === "FREE_FLOWING_BORE") {
    context.moveTo(px - r, py + r); context.lineTo(px, py - r - 1); context.lineTo(px + r, py + r); context.closePath();
  } else if (kind === "IDLE_BORE") context.rect(px - r + 1, py - r + 1, 2 * r - 2, 2 * r - 2);
  else {
    context.moveTo(px, py - r); context.lineTo(px + r, py); context.lineTo(px, py + r); context.lineTo(px - r, py); context.closePath();
  }
}

/** One symbol: the outline says what it is, the filling what it does, a ring that a limit is crossed there. */
function symbol(context, kind, state, px, py, crossed) {
  if (crossed) {
    for (const [colour, width] of [["#fff", 5], ["#a3121c", 2.5]]) {
      context.beginPath(); context.arc(px, py, 12, 0, 7); context.strokeStyle = colour; context.lineWidth = width; context.stroke();
    }
  }
  outline(context, kind, px, py);
  context.lineWidth = 4; context.strokeStyle = "#fff"; context.stroke();
  context.fillStyle = STATE_FILLS[state]; context.fill();
  context.lineWidth = 2; context.strokeStyle = "#14181a"; context.stroke();
  if (state === "STOPPED") { context.beginPath(); context.moveTo(px - 9, py + 9); context.lineTo(px + 9, py - 9); context.stroke(); }
}

/** Whether a limit is crossed, by more than its error, on a date; a distance is so on every date. */
const isCrossedBy = (limit, date) => limit.verdict === "CROSSED" && (limit.crossedOn === null || limit.crossedOn <= date);

/** Whether a limit at the site has been crossed by a date of the map. */
const isCrossed = (site, date) => report.limits.some(limit =>
  limit.site === site.name && isCrossedBy(limit, field.dates[date]));

/** A cross where a limit on the map is farthest beyond. */
function crossedCell(context, px, py) {
  for (const [width, colour] of [[6, "#fff"], [3, "#b3261e"]]) {
    context.beginPath(); context.moveTo(px - 8, py - 8); context.lineTo(px + 8, py + 8);
    context.moveTo(px - 8, py + 8); context.lineTo(px + 8, py - 8);
    context.lineWidth = width; context.strokeStyle = colour; context.stroke();
  }
}

const overlap = (a, b) => !(a.left > b.right || a.right < b.left || a.top > b.bottom || a.bottom < b.top);

/** Symbols first, then the names that find room beside them without covering a symbol or another name. */
function drawSites(context) {
  const shown = report.sites.map(site => ({ site, at: toPixel(site.x, site.y) }))
    .filter(({ at }) => at[0] > -10 && at[1] > -10 && at[0] < map.width + 10 && at[1] < map.height + 10);
  const taken = shown.map(({ at }) => ({ left: at[0] - 8, right: at[0] + 8, top: at[1] - 8, bottom: at[1] + 8 }));
  taken.push({ left: map.width - 36, right: map.width, top: 0, bottom: 52 }, { left: 0, right: 170, top: map.height - 36, bottom: map.height });
  for (const { at: [x, y] } of lineEnds()) taken.push({ left: x - 6, right: x + 6, top: y - 8, bottom: y + 8 });
  for (const limit of report.limits) {
    if (limit.x !== null && isCrossedBy(limit, field.dates[map.date])) crossedCell(context, ...toPixel(limit.x, limit.y));
  }
  shown.forEach(({ site, at }) => symbol(context, site.kind, site.states[map.date][0], ...at, isCrossed(site, map.date)));
  context.font = "600 12px system-ui, sans-serif";
  for (const { site, at: [px, py] } of shown) {
    const text = shortName(site.name), wide = context.measureText(text).width;
    const beside = [[px + 12, py - 7], [px - 12 - wide, py - 7], [px - wide / 2, py - 25], [px - wide / 2, py + 11]]
      .map(([left, top]) => ({ left, right: left + wide, top, bottom: top + 14 }));
    const place = beside.find(box => box.left > 0 && box.right < map.width && taken.every(other => !overlap(box, other)));
    if (!place) continue;
    taken.push(place);
    haloText(context, text, place.left, place.top + 11, "left");
  }
}

/** Discs as large as the drawdown that one bore has caused at each site since the start. */
function drawEffects(context) {
  if (map.effectOf === null) return;
  const effects = effectsOf(map.effectOf, map.date), most = Math.max(1e-9, ...effects.map(Math.abs));
  context.font = "12px system-ui, sans-serif";
  effects.forEach((effect, i) => {
    const site = siteNamed(report.whatIf.stations[i]);
    if (!site || Math.abs(effect) < 0.005) return;
    const [px, py] = toPixel(site.x, site.y), r = 4 + 34 * Math.sqrt(Math.abs(effect) / most);
    context.beginPath(); context.arc(px, py, r, 0, 7);
    context.fillStyle = effect > 0 ? "rgba(116, 54, 9, 0.45)" : "rgba(13, 68, 116, 0.45)"; context.fill();
    context.strokeStyle = "#fff"; context.lineWidth = 1.5; context.setLineDash(effect > 0 ? [] : [4, 3]); context.stroke();
    context.setLineDash([]);
    haloText(context, heightWords(effect), px, py + r + 12, "center");
  });
}

function siteAt(x, y) {
  let best = null, distance = 14 * map.metresPerPixel;
  for (const site of report.sites) {
    const d = Math.hypot(site.x - x, site.y - y);
    if (d < distance) { best = site; distance = d; }
  }
  return best;
}

/** A line of a legend: a small drawing, 30 x 28 px, and words. */
function legendItem(words, draw) {
  const made = element("li"), canvas = element("canvas", null, { width: 60, height: 56, "aria-hidden": "true" });
  const context = canvas.getContext("2d");
  context.scale(2, 2); draw(context);
  made.append(canvas, words);
  return made;
}

function fillSymbols() {
  const present = new Map();
  for (const site of report.sites) present.set(site.kind + site.states[map.date][0], site);
  const items = Array.from(present.values(), site => legendItem(site.kindWords + ", " + site.states[map.date][1],
    context => symbol(context, site.kind, site.states[map.date][0], 15, 14)));
  if (report.sites.some(site => isCrossed(site, map.date))) {
    items.push(legendItem("a limit is crossed here", context => symbol(context, "PROTECTED_POINT", "WATCHED", 15, 14, true)));
  }
  if (report.limits.some(limit => limit.x !== null && isCrossedBy(limit, field.dates[map.date]))) {
    items.push(legendItem("a limit on the map is crossed farthest here", context => crossedCell(context, 15, 14)));
  }
  byId("map-symbols").replaceChildren(...items);
}

/** Lines of positions in a GeoJSON geometry (RFC 7946), each at least one position long. */
function linesOf(geometry) {
  if (!geometry) return [];
  const { type, coordinates } = geometry;
  if (type === "GeometryCollection") return geometry.geometries.flatMap(linesOf);
  if (type === "Point") return [[coordinates]];
  if (type === "MultiPoint") return coordinates.map(point => [point]);
  if (type === "LineString") return [coordinates];
  if (type === "MultiLineString" || type === "Polygon") return coordinates;
  if (type === "MultiPolygon") return coordinates.flat();
  throw new Error("unknown geometry " + type);
}

/** Takes shapes from a GeoJSON text in the metres of the map. Answers a sentence about what became of it. */
function addOverlay(name, text) {
  try {
    const root = JSON.parse(text);
    const geometries = root.type === "FeatureCollection" ? root.features.map(f => f.geometry)
      : [root.type === "Feature" ? root.geometry : root];
    const lines = geometries.flatMap(linesOf), points = lines.flat();
    if (!points.length || !points.every(p => Array.isArray(p) && Number.isFinite(p[0]) && Number.isFinite(p[1]))) {
      return name + " holds no shapes.";
    }
    const near = points.filter(([x, y]) => x >= extentX[0] && x <= extentX[1] && y >= extentY[0] && y <= extentY[1]);
    if (!near.length) {
      return name + " lies outside the map. Its coordinates must be eastings and northings in metres, as those of the map are.";
    }
    map.overlays.push(lines);
    return name + ": " + lines.length + (lines.length === 1 ? " shape" : " shapes") + " drawn.";
  } catch (error) {
    return name + " is no GeoJSON that can be read: " + error.message;
  }
}

function drawOverlays(context) {
  for (const line of map.overlays.flat()) {
    if (line.length === 1) {
      const [px, py] = toPixel(...line[0]);
      rimmed(context, 2, () => { context.moveTo(px - 5, py - 5); context.lineTo(px + 5, py + 5); context.moveTo(px + 5, py - 5); context.lineTo(px - 5, py + 5); });
    } else rimmed(context, 1.6, () => line.forEach((point, i) => i ? context.lineTo(...toPixel(...point)) : context.moveTo(...toPixel(...point))));
  }
}
