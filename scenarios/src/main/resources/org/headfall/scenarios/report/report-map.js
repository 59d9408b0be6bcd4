// The map: its view, classes of colour, contours by d3-contour, the read-out.

const map = {
  canvas: byId("map"), quantity: "drawdown", date: field.dates.length - 1, centre: [0, 0], metresPerPixel: 1, cursor: null,
  classes: {}, base: null, overlays: [], effectOf: null, width: 0, height: 0,
};

const extentX = [field.x[0], field.x[field.x.length - 1]], extentY = [field.y[0], field.y[field.y.length - 1]];

function mapSize(view = map) {
  const width = Math.max(240, view.canvas.parentElement.clientWidth);
  const shape = (extentY[1] - extentY[0]) / (extentX[1] - extentX[0]);
  const height = Math.max(width * 0.45, Math.min(340, width), Math.min(width * 1.1, width * shape));
  return [width, Math.round(Math.min(isPrinted() ? 285 : 560, height))];
}

const toPixel = (x, y, view = map) => [view.width / 2 + (x - view.centre[0]) / view.metresPerPixel,
  view.height / 2 - (y - view.centre[1]) / view.metresPerPixel];
const toGround = (px, py) => [map.centre[0] + (px - map.width / 2) * map.metresPerPixel,
  map.centre[1] - (py - map.height / 2) * map.metresPerPixel];

function lookAt(west, east, south, north, view = map) {
  view.centre = [(west + east) / 2, (south + north) / 2];
  view.metresPerPixel = Math.max((east - west) / view.width, (north - south) / view.height, 0.05);
}

function lookAtWhole() { lookAt(...extentX, ...extentY); }

/** Places of limits that are crossed in the run: sites, and cells of limits on the map. */
function crossedPlaces() {
  return report.limits.filter(limit => limit.verdict === "CROSSED")
    .map(limit => limit.x !== null ? { x: limit.x, y: limit.y } : siteNamed(limit.site)).filter(place => place);
}

/** The proposed bores or, without any, all pumped bores or all sites. */
function fieldSites() {
  const proposed = report.sites.filter(site => site.proposed), bores = report.sites.filter(site => site.kind === "PUMPED_BORE");
  return proposed.length ? proposed : bores.length ? bores : report.sites;
}

/** What the map opens with: the bore field, and where limits are crossed. */
function lookAtAnswer() { lookAtPlaces(fieldSites().concat(crossedPlaces())); }

function lookAtField() { lookAtPlaces(fieldSites()); }

/** Moves the view so that all places are in it, with some room around them. */
function lookAtPlaces(shown, view = map) {
  if (!shown.length) { lookAt(...extentX, ...extentY, view); return; }
  const [west, east] = d3.extent(shown, site => site.x), [south, north] = d3.extent(shown, site => site.y);
  const rim = Math.max(1000, 0.35 * Math.max(east - west, north - south));
  lookAt(west - rim, east + rim, south - rim, north + rim, view);
}

function classesOf(key) {
  if (!map.classes[key]) {
    const limits = classLimits(key);
    map.classes[key] = { limits, colours: classColours(key, limits) };
  }
  return map.classes[key];
}

function paintClasses() {
  const { limits, colours } = classesOf(map.quantity), values = gridOf(map.quantity, map.date);
  map.base.width = map.width; map.base.height = map.height;
  const context = map.base.getContext("2d"), image = context.createImageData(map.width, map.height), pixels = image.data;
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
  context.putImageData(image, 0, 0);
}

/** Columns or rows of cells that can be seen, one more on each side. */
function seen(centres, from, to) {
  return [Math.max(0, locate(centres, from)[0] - 1), Math.min(centres.length, locate(centres, to)[0] + 3)];
}

/** Contours of the part that can be seen, in index space; the centre of cell i is at i + 0.5. */
function contoursInView() {
  const [west, south] = toGround(0, map.height), [east, north] = toGround(map.width, 0);
  const [c1, c2] = seen(field.x, west, east), [r1, r2] = seen(field.y, south, north), nx = c2 - c1, ny = r2 - r1;
  const all = gridOf(map.quantity, map.date), part = new Float32Array(nx * ny);
  for (let r = 0; r < ny; r++) {
    part.set(all.subarray((r1 + r) * field.x.length + c1, (r1 + r) * field.x.length + c2), r * nx);
  }
  const contours = d3.contours().size([nx, ny]).smooth(true).thresholds(classesOf(map.quantity).limits)(part);
  const along = (centres, first, index) => {
    const at = Math.max(0, Math.min(centres.length - 1, first + index - 0.5));
    const i = Math.max(0, Math.min(centres.length - 2, Math.floor(at)));
    return centres.length < 2 ? centres[0] : centres[i] + (at - i) * (centres[i + 1] - centres[i]);
  };
  return contours.map(contour => ({ value: contour.value, lines: contour.coordinates.flat().map(ring => ring.map(([a, b]) =>
    a <= 0 || a >= nx || b <= 0 || b >= ny ? null : toPixel(along(field.x, c1, a), along(field.y, r1, b)))) }));
}

const inside = ([px, py]) => px > 24 && py > 16 && px < map.width - 24 && py < map.height - 40;
const clear = (taken, [px, py]) => taken.every(({ place }) => Math.hypot(place[0] - px, place[1] - py) > 40);

/** Draws a contour; null in a line lifts the pen. Answers where a label may stand. */
function strokeContour(context, lines, taken) {
  let best = null;
  context.beginPath();
  for (const line of lines) {
    let last = null, length = 0;
    for (const point of line) {
      if (!point) { last = null; continue; }
      if (last) { context.lineTo(...point); length += Math.hypot(point[0] - last[0], point[1] - last[1]); } else context.moveTo(...point);
      last = point;
      if (!best && length > 46 && inside(point) && clear(taken, point)) best = point;
    }
  }
  context.stroke();
  return best;
}

function strokeContours(context) {
  const height = QUANTITIES[map.quantity].height;
  // Names stand to the right of their sites, so labels keep away from there.
  const taken = report.sites.map(site => toPixel(site.x, site.y)).flatMap(([px, py]) => [[px, py], [px + 50, py]])
    .map(place => ({ place, text: "" }));
  for (const contour of contoursInView()) {
    context.setLineDash(contour.value < 0 ? [6, 4] : []);
    context.lineWidth = contour.value === 0 ? 2.4 : 1;
    context.strokeStyle = "rgba(20, 24, 26, 0.75)";
    const place = strokeContour(context, contour.lines, taken);
    if (place) taken.push({ place, text: limitWords(contour.value, height) });
  }
  context.setLineDash([]);
  context.font = "12px system-ui, sans-serif";
  for (const { place, text } of taken) haloText(context, text, place[0], place[1] + 4, "center");
}

/** A class limit as short as it can be, in the chosen unit. */
const limitWords = (value, height) => minus(String(+(height ? inHeightUnit(value) : value).toPrecision(4)));

function haloText(context, text, px, py, align) {
  context.textAlign = align; context.lineWidth = 3; context.lineJoin = "round";
  context.strokeStyle = "rgba(255, 255, 255, 0.9)"; context.strokeText(text, px, py);
  context.fillStyle = "#14181a"; context.fillText(text, px, py);
}

/** A dark line with a light rim, to be seen on any colour. */
function rimmed(context, width, draw) {
  for (const [colour, more] of [["#fff", 3], ["#14181a", 0]]) {
    context.strokeStyle = colour; context.lineWidth = width + more;
    context.beginPath(); draw(); context.stroke();
  }
}

function drawScaleAndNorth(context, view = map) {
  const target = view.metresPerPixel * Math.min(140, view.width / 3), power = 10 ** Math.floor(Math.log10(target));
  const length = [5, 2, 1].map(n => n * power).find(n => n <= target), wide = length / view.metresPerPixel, y = view.height - 12;
  rimmed(context, 2, () => {
    context.moveTo(12, y - 5); context.lineTo(12, y); context.lineTo(12 + wide, y); context.lineTo(12 + wide, y - 5);
  });
  context.font = "12px system-ui, sans-serif";
  haloText(context, length >= 1000 ? length / 1000 + " km" : length + " m", 12 + wide / 2, y - 8, "center");
  const x = view.width - 20;
  rimmed(context, 2, () => {
    context.moveTo(x, 30); context.lineTo(x, 10); context.moveTo(x - 5, 17); context.lineTo(x, 10); context.lineTo(x + 5, 17);
  });
  haloText(context, "N", x, 44, "center");
}

/** Letters of the ends of the section, each at a place beyond its end (px). */
function lineEnds() {
  if (!section.line) return [];
  const a = toPixel(section.line.fromX, section.line.fromY), b = toPixel(section.line.toX, section.line.toY);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1, beyond = 10 / length;
  const place = (end, other) => [end[0] + (end[0] - other[0]) * beyond, end[1] + (end[1] - other[1]) * beyond];
  return [{ name: "A", end: a, at: place(a, b) }, { name: "B", end: b, at: place(b, a) }];
}

function drawLineOfSection(context) {
  if (!section.line) return;
  const ends = lineEnds();
  context.setLineDash([10, 4, 2, 4]);
  rimmed(context, 1.8, () => { context.moveTo(...ends[0].end); context.lineTo(...ends[1].end); });
  context.setLineDash([]);
  context.font = "600 12px system-ui, sans-serif";
  for (const { name, at: [x, y] } of ends) haloText(context, name, x, y + 4, "center");
}

function drawCursor(context) {
  if (!map.cursor) return;
  const [px, py] = toPixel(...map.cursor);
  rimmed(context, 1.5, () => {
    context.moveTo(px - 12, py); context.lineTo(px + 12, py); context.moveTo(px, py - 12); context.lineTo(px, py + 12);
  });
}

/** Draws the map; colours and contours are kept where only the cursor has moved. */
function drawMap(keepBase) {
  [map.width, map.height] = mapSize();
  const ratio = window.devicePixelRatio || 1, context = map.canvas.getContext("2d");
  map.canvas.width = map.width * ratio; map.canvas.height = map.height * ratio;
  if (!keepBase || !map.base) {
    map.base = map.base || element("canvas");
    map.lines = map.lines || element("canvas");
    paintClasses();
    map.lines.width = map.width * ratio; map.lines.height = map.height * ratio;
    const lines = map.lines.getContext("2d");
    lines.setTransform(ratio, 0, 0, ratio, 0, 0);
    strokeContours(lines); drawOverlays(lines);
  }
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = "#d9d7d0"; context.fillRect(0, 0, map.width, map.height);
  context.drawImage(map.base, 0, 0);
  context.drawImage(map.lines, 0, 0, map.width, map.height);
  drawLineOfSection(context); drawEffects(context); drawSites(context); drawScaleAndNorth(context); drawCursor(context);
}

/** Values of the cell nearest to a place, in words. */
function readingAt(x, y) {
  if (x < extentX[0] || x > extentX[1] || y < extentY[0] || y > extentY[1]) return "Outside the area of the calculation.";
  const column = nearest(field.x, x), row = nearest(field.y, y), cell = row * field.x.length + column;
  const parts = ["East " + field.x[column].toFixed(0) + " m, north " + field.y[row].toFixed(0) + " m"];
  for (const key of shownQuantities()) {
    const value = QUANTITIES[key].at(map.date, cell);
    parts.push(QUANTITIES[key].words.toLowerCase() + " " + (QUANTITIES[key].height ? heightWords(value) : levelWords(value)));
  }
  return parts.join(" \u00b7 ");
}

function read(x, y) {
  const near = siteAt(x, y);
  map.cursor = [x, y];
  byId("map-reading").textContent = (near
    ? shortName(near.name) + " (" + near.kindWords + ", " + near.states[map.date][1] + ") \u00b7 " : "") + readingAt(x, y);
}

function fillLegend() {
  const { limits, colours } = classesOf(map.quantity), { words, meaning, height } = QUANTITIES[map.quantity];
  const text = i => i === 0 ? "below " + limitWords(limits[0], height)
    : i === limits.length ? limitWords(limits[i - 1], height) + " and more"
      : limitWords(limits[i - 1], height) + " to " + limitWords(limits[i], height);
  byId("map-scale").replaceChildren(element("li", words + " (" + (height ? heightUnit() : "m") + "), " + meaning + ":"),
    ...colours.map((colour, i) => {
      const item = element("li"), swatch = element("i");
      swatch.style.background = rgb(colour);
      item.append(swatch, text(i));
      return item;
    }));
}
