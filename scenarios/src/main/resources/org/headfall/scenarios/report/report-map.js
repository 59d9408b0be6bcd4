// The map: classes of colour, contours by d3-contour, sites, read-out.

const map = {
  canvas: document.getElementById("map"), quantity: "drawdown", date: field.dates.length - 1,
  centre: [0, 0], metresPerPixel: 1, cursor: null, classes: {}, contours: {}, base: null, drawing: null, line: null,
};

const extentX = [field.x[0], field.x[field.x.length - 1]], extentY = [field.y[0], field.y[field.y.length - 1]];

function mapSize() {
  const width = Math.max(240, map.canvas.parentElement.clientWidth);
  const shape = (extentY[1] - extentY[0]) / (extentX[1] - extentX[0]);
  return [width, Math.round(Math.min(560, Math.max(width * 0.45, Math.min(320, width * 0.85), Math.min(width * 1.1, width * shape))))];
}

const toPixel = (x, y) => [map.width / 2 + (x - map.centre[0]) / map.metresPerPixel,
  map.height / 2 - (y - map.centre[1]) / map.metresPerPixel];
const toGround = (px, py) => [map.centre[0] + (px - map.width / 2) * map.metresPerPixel,
  map.centre[1] - (py - map.height / 2) * map.metresPerPixel];

function lookAt(west, east, south, north) {
  map.centre = [(west + east) / 2, (south + north) / 2];
  map.metresPerPixel = Math.max((east - west) / map.width, (north - south) / map.height, 0.05);
}

function lookAtField() {
  const bores = report.sites.filter(site => site.kind === "PUMPED_BORE");
  const shown = bores.length ? bores : report.sites;
  if (!shown.length) { lookAt(...extentX, ...extentY); return; }
  const [west, east] = d3.extent(shown, site => site.x), [south, north] = d3.extent(shown, site => site.y);
  const rim = Math.max(1000, 0.25 * Math.max(east - west, north - south));
  lookAt(west - rim, east + rim, south - rim, north + rim);
}

function classesOf(key) {
  if (!map.classes[key]) {
    const limits = classLimits(key);
    map.classes[key] = { limits, colours: classColours(key, limits) };
  }
  return map.classes[key];
}

function contoursOf(key, date) {
  const name = key + date;
  if (!map.contours[name]) {
    const values = QUANTITIES[key].values(date);
    map.contours[name] = d3.contours().size([field.x.length, field.y.length]).smooth(true)
      .thresholds(classesOf(key).limits)(values);
  }
  return map.contours[name];
}

function paintClasses(context) {
  const { limits, colours } = classesOf(map.quantity), values = QUANTITIES[map.quantity].values(map.date);
  const image = context.createImageData(map.width, map.height), pixels = image.data;
  const columns = Array.from({ length: map.width }, (_, px) => {
    const x = toGround(px + 0.5, 0)[0];
    return x < extentX[0] || x > extentX[1] ? null : locate(field.x, x);
  });
  for (let py = 0, at = 0; py < map.height; py++) {
    const y = toGround(0, py + 0.5)[1];
    const row = y < extentY[0] || y > extentY[1] ? null : locate(field.y, y);
    for (let px = 0; px < map.width; px++, at += 4) {
      if (!row || !columns[px]) continue;
      const value = between(values, columns[px][0], columns[px][1], row[0], row[1]);
      if (Number.isNaN(value)) continue;
      let k = 0;
      while (k < limits.length && value >= limits[k]) k++;
      const colour = colours[k];
      pixels[at] = colour[0]; pixels[at + 1] = colour[1]; pixels[at + 2] = colour[2]; pixels[at + 3] = 255;
    }
  }
  map.base.width = map.width; map.base.height = map.height;
  map.base.getContext("2d").putImageData(image, 0, 0);
}

/** Coordinate of a contour's place in index space, where the centre of cell i is at i + 0.5. */
function alongAxis(centres, index) {
  const at = Math.max(0, Math.min(centres.length - 1, index - 0.5)), i = Math.min(centres.length - 2, Math.floor(at));
  return centres.length < 2 ? centres[0] : centres[i] + (at - i) * (centres[i + 1] - centres[i]);
}

function strokeContours(context) {
  const nx = field.x.length, ny = field.y.length, taken = [];
  const rim = point => point[0] <= 0 || point[0] >= nx || point[1] <= 0 || point[1] >= ny;
  context.font = "12px system-ui, sans-serif";
  for (const contour of contoursOf(map.quantity, map.date)) {
    const label = contour.value > 0 && map.quantity !== "head" ? String(contour.value) : minus(String(contour.value));
    context.beginPath();
    let best = null;
    for (const ring of contour.coordinates.flat()) {
      let pen = false, length = 0, last = null, start = null;
      for (const point of ring) {
        if (rim(point)) { pen = false; continue; }
        const pixel = toPixel(alongAxis(field.x, point[0]), alongAxis(field.y, point[1]));
        if (pen) context.lineTo(...pixel); else context.moveTo(...pixel);
        if (pen && last) length += Math.hypot(pixel[0] - last[0], pixel[1] - last[1]);
        pen = true; last = pixel; start = start || pixel;
        if (length > 40 && inside(pixel) && clear(taken, pixel) && (!best || length < 90)) best = pixel;
      }
    }
    context.setLineDash(contour.value < 0 ? [6, 4] : []);
    context.lineWidth = contour.value === 0 ? 2.4 : 1;
    context.strokeStyle = "rgba(20, 24, 26, 0.75)";
    context.stroke();
    if (best) taken.push([best, label]);
  }
  context.setLineDash([]);
  for (const [place, label] of taken) haloText(context, label, place[0], place[1] + 4, "center");
}

const inside = ([px, py]) => px > 20 && py > 14 && px < map.width - 20 && py < map.height - 34;
const clear = (taken, [px, py]) => taken.every(([place]) => Math.hypot(place[0] - px, place[1] - py) > 34);

function haloText(context, text, px, py, align) {
  context.textAlign = align; context.lineWidth = 3; context.lineJoin = "round";
  context.strokeStyle = "rgba(255, 255, 255, 0.9)"; context.strokeText(text, px, py);
  context.fillStyle = "#14181a"; context.fillText(text, px, py);
}

/** One symbol: the outline says what it is, the filling what it does. */
function symbol(context, kind, state, px, py) {
  const r = 6;
  context.beginPath();
  if (kind === "PUMPED_BORE") context.arc(px, py, r, 0, 7);
  else if (kind === "SPRING") { context.moveTo(px, py - r - 3); context.quadraticCurveTo(px + r + 3, py + r, px, py + r); context.quadraticCurveTo(px - r - 3, py + r, px, py - r - 3); }
  else if (kind === "FREE_FLOWING_BORE") { context.moveTo(px - r, py + r); context.lineTo(px, py - r - 1); context.lineTo(px + r, py + r); context.closePath(); }
  else if (kind === "IDLE_BORE") context.rect(px - r + 1, py - r + 1, 2 * r - 2, 2 * r - 2);
  else { context.moveTo(px, py - r); context.lineTo(px + r, py); context.lineTo(px, py + r); context.lineTo(px - r, py); context.closePath(); }
  context.lineWidth = 4; context.strokeStyle = "#fff"; context.stroke();
  context.fillStyle = { RUNNING: "#14181a", FLOWING: "#1769a0", CUT_BACK: "#e9b000", STOPPED: "#fff", SHUT: "#9aa0a2", WATCHED: "#fff" }[state];
  context.fill();
  context.lineWidth = 2; context.strokeStyle = "#14181a"; context.stroke();
  if (state === "STOPPED") { context.beginPath(); context.moveTo(px - 9, py + 9); context.lineTo(px + 9, py - 9); context.stroke(); }
}

/** Symbols first, then the names that find room beside them without covering a symbol or another name. */
function drawSites(context) {
  const shown = report.sites.map(site => ({ site, at: toPixel(site.x, site.y) }))
    .filter(({ at }) => at[0] > -10 && at[1] > -10 && at[0] < map.width + 10 && at[1] < map.height + 10);
  const taken = shown.map(({ at }) => ({ left: at[0] - 8, right: at[0] + 8, top: at[1] - 8, bottom: at[1] + 8 }));
  shown.forEach(({ site, at }) => symbol(context, site.kind, site.states[map.date][0], ...at));
  context.font = "600 12px system-ui, sans-serif";
  for (const { site, at: [px, py] } of shown) {
    const text = shortName(site.name), wide = context.measureText(text).width;
    const places = [{ left: px + 10, right: px + 10 + wide }, { left: px - 10 - wide, right: px - 10 }]
      .map(box => ({ ...box, top: py - 7, bottom: py + 7 }));
    const place = places.find(box => box.left > 0 && box.right < map.width
      && taken.every(t => t.right < box.left || t.left > box.right || t.bottom < box.top || t.top > box.bottom));
    if (!place) continue;
    taken.push(place);
    haloText(context, text, place.left, py + 4, "left");
  }
}

function drawScaleAndNorth(context) {
  const target = map.metresPerPixel * Math.min(140, map.width / 3), power = 10 ** Math.floor(Math.log10(target));
  const length = [5, 2, 1].map(n => n * power).find(n => n <= target), wide = length / map.metresPerPixel;
  const y = map.height - 12;
  context.strokeStyle = "#fff"; context.lineWidth = 5; context.beginPath(); context.moveTo(12, y); context.lineTo(12 + wide, y); context.stroke();
  context.strokeStyle = "#14181a"; context.lineWidth = 2; context.beginPath();
  context.moveTo(12, y - 5); context.lineTo(12, y); context.lineTo(12 + wide, y); context.lineTo(12 + wide, y - 5); context.stroke();
  context.font = "12px system-ui, sans-serif";
  haloText(context, length >= 1000 ? length / 1000 + " km" : length + " m", 12 + wide / 2, y - 8, "center");
  const x = map.width - 20;
  context.beginPath(); context.moveTo(x, 30); context.lineTo(x, 10); context.moveTo(x - 5, 17); context.lineTo(x, 10); context.lineTo(x + 5, 17);
  context.strokeStyle = "#fff"; context.lineWidth = 5; context.stroke(); context.strokeStyle = "#14181a"; context.lineWidth = 2; context.stroke();
  haloText(context, "N", x, 44, "center");
}

function drawLineOfSection(context) {
  if (!map.line) return;
  const a = toPixel(map.line.fromX, map.line.fromY), b = toPixel(map.line.toX, map.line.toY);
  context.setLineDash([10, 4, 2, 4]); context.lineWidth = 4; context.strokeStyle = "rgba(255,255,255,.8)";
  context.beginPath(); context.moveTo(...a); context.lineTo(...b); context.stroke();
  context.lineWidth = 1.8; context.strokeStyle = "#14181a"; context.stroke(); context.setLineDash([]);
}

function drawMap(keepBase) {
  [map.width, map.height] = mapSize();
  const ratio = window.devicePixelRatio || 1, context = map.canvas.getContext("2d");
  map.canvas.width = map.width * ratio; map.canvas.height = map.height * ratio;
  map.base = map.base || document.createElement("canvas");
  if (!keepBase) paintClasses(context);
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = "#d9d7d0"; context.fillRect(0, 0, map.width, map.height);
  context.drawImage(map.base, 0, 0);
  strokeContours(context);
  drawLineOfSection(context);
  drawSites(context);
  drawScaleAndNorth(context);
  if (map.cursor) {
    const [px, py] = toPixel(...map.cursor);
    context.strokeStyle = "#fff"; context.lineWidth = 4; cross(context, px, py);
    context.strokeStyle = "#14181a"; context.lineWidth = 1.5; cross(context, px, py);
  }
}

function cross(context, px, py) {
  context.beginPath(); context.moveTo(px - 12, py); context.lineTo(px + 12, py); context.moveTo(px, py - 12); context.lineTo(px, py + 12); context.stroke();
}

/** Values of the cell nearest to a place, in words. */
function readingAt(x, y) {
  if (x < extentX[0] || x > extentX[1] || y < extentY[0] || y > extentY[1]) return "Outside the area of the calculation.";
  const column = nearest(field.x, x), row = nearest(field.y, y), cell = row * field.x.length + column;
  const parts = ["East " + field.x[column].toFixed(0) + " m, north " + field.y[row].toFixed(0) + " m"];
  for (const key in QUANTITIES) {
    if (!QUANTITIES[key].needs || field[QUANTITIES[key].needs]) {
      parts.push(QUANTITIES[key].words.toLowerCase() + " " + metres(QUANTITIES[key].values(map.date)[cell]));
    }
  }
  return parts.join(" \u00b7 ");
}

function read(x, y) {
  const near = siteAt(x, y);
  map.cursor = [x, y];
  document.getElementById("map-reading").textContent = (near
    ? shortName(near.name) + " (" + near.kindWords + ", " + near.states[map.date][1] + ") \u00b7 " : "") + readingAt(x, y);
}

function siteAt(x, y) {
  let best = null, distance = 14 * map.metresPerPixel;
  for (const site of report.sites) {
    const d = Math.hypot(site.x - x, site.y - y);
    if (d < distance) { best = site; distance = d; }
  }
  return best;
}

function fillLegends() {
  const { limits, colours } = classesOf(map.quantity), list = document.getElementById("map-scale");
  list.replaceChildren(element("li", QUANTITIES[map.quantity].words + " in metres:"));
  colours.forEach((colour, i) => {
    const item = element("li"), swatch = element("i");
    swatch.style.background = "rgb(" + colour.join(",") + ")";
    const text = i === 0 ? "below " + minus(String(limits[0])) : i === limits.length ? minus(String(limits[i - 1])) + " and more"
      : minus(String(limits[i - 1])) + " to " + minus(String(limits[i]));
    item.append(swatch, text);
    list.append(item);
  });
  const seen = new Map();
  for (const site of report.sites) seen.set(site.kind + site.states[map.date][0], site);
  const symbols = document.getElementById("map-symbols");
  symbols.replaceChildren(...Array.from(seen.values(), site => {
    const item = element("li"), canvas = element("canvas", null, { width: 52, height: 44, "aria-hidden": "true" });
    const context = canvas.getContext("2d");
    context.scale(2, 2); symbol(context, site.kind, site.states[map.date][0], 13, 11);
    item.append(canvas, site.kindWords + ", " + site.states[map.date][1]);
    return item;
  }));
}
