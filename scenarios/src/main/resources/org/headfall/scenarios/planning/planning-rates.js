// The map of rates: circles by mean rate, rings by what there is of limits at a place, and reading it by pointer and keys.

const RATE_WORDS = { sharing: "bore, its circle by its mean rate", resting: "bore that rests", bore: "other bore of the document", spring: "spring", point: "protected point" };
const MARK_WORDS = { kept: "limits here are kept with something left", binds: "a limit here binds: nothing is left", gives_way: "a limit here has to give way" };
const MARK_LABELS = { none: "", kept: "", binds: ": binds", gives_way: ": gives way" };
const LONGEST_LABEL = 26;

/** How near a pointer has to come to a place outside its circle (px). */
const REACH = 22;

const largestCircle = () => Math.max(16, Math.min(36, view.width / 22));
const mostRate = () => Math.max(1e-9, ...plan.rates.places.map(place => place.rate));
const radiusOf = rate => largestCircle() * Math.sqrt(rate / mostRate());

/** Radius of what a place takes on the map (px), its circle or its symbol. */
const extentOf = place => Math.max(place.kind === "sharing" || place.kind === "resting" ? 4 : 8, radiusOf(place.rate));

function circle(context, x, y, radius) {
  context.beginPath(); context.arc(x, y, radius, 0, 2 * Math.PI);
}

/** Dashed: kept. Two lines: binds. Two lines with four ticks outwards: gives way. */
function drawMark(context, mark, x, y, radius) {
  if (mark === "none") return;
  context.save();
  context.strokeStyle = ink(mark === "kept" ? "quiet" : mark === "binds" ? "close" : "bad");
  context.lineWidth = mark === "kept" ? 1.5 : 2.5;
  if (mark === "kept") context.setLineDash([4, 3]);
  circle(context, x, y, radius + 4); context.stroke();
  if (mark !== "kept") { circle(context, x, y, radius + 9); context.stroke(); }
  if (mark === "gives_way") {
    for (const [dx, dy] of [[1, 0], [0, 1], [-1, 0], [0, -1]]) {
      context.beginPath(); context.moveTo(x + dx * (radius + 9), y + dy * (radius + 9));
      context.lineTo(x + dx * (radius + 16), y + dy * (radius + 16)); context.stroke();
    }
  }
  context.restore();
}

function drawRatePlace(context, place, x, y) {
  const radius = radiusOf(place.rate);
  if (place.kind === "sharing") {
    circle(context, x, y, radius);
    context.globalAlpha = 0.45; context.fillStyle = ink("water"); context.fill(); context.globalAlpha = 1;
    context.lineWidth = 1.5; context.strokeStyle = ink("water"); context.stroke();
    circle(context, x, y, 2.5); context.fillStyle = ink("ink"); context.fill();
  } else if (place.kind === "resting") {
    circle(context, x, y, 5);
    context.fillStyle = ink("paper"); context.fill();
    context.lineWidth = 1.5; context.strokeStyle = ink("ink"); context.stroke();
    context.beginPath(); context.moveTo(x - 7, y + 7); context.lineTo(x + 7, y - 7); context.stroke();
  } else {
    context.beginPath(); SHAPES[place.kind](context, x, y);
    context.fillStyle = FILLS[place.kind]; context.fill();
    context.lineWidth = 1.5; context.strokeStyle = place.kind === "bore" ? "#ffffff" : "#000000"; context.stroke();
  }
  drawMark(context, place.mark, x, y, extentOf(place));
}

/** The aquifer as an even ground, hatched outside. */
function drawGround(context) {
  const image = context.createImageData(view.width, view.height), pixels = image.data;
  const part = name => { const hex = ink(name).replace(/^#(.)(.)(.)$/, "#$1$1$2$2$3$3"); return [1, 3, 5].map(k => parseInt(hex.slice(k, k + 2), 16)); };
  const within = part("panel"), hatch = part("line");
  const columns = Array.from({ length: view.width }, (_, px) => indexOf(grid.edgesX, toGround(px + 0.5, 0)[0]));
  for (let py = 0, at = 0; py < view.height; py++) {
    const row = indexOf(grid.edgesY, toGround(0, py + 0.5)[1]);
    for (let px = 0; px < view.width; px++, at += 4) {
      const inside = row >= 0 && columns[px] >= 0 && !Number.isNaN(grid.values.inside[row * grid.x.length + columns[px]]);
      if (!inside && (px + py) % 7) continue;
      const colour = inside ? within : hatch;
      pixels[at] = colour[0]; pixels[at + 1] = colour[1]; pixels[at + 2] = colour[2]; pixels[at + 3] = 255;
    }
  }
  context.putImageData(image, 0, 0);
}

const shortLabel = place => (place.name.length > LONGEST_LABEL ? place.name.slice(0, LONGEST_LABEL - 1) + "\u2026" : place.name) + MARK_LABELS[place.mark];

/** Boxes of a name about a place, beside it first, then farther away. */
function nameBoxes(x, y, away, wide) {
  return [0, 12, 26, 44, 66].flatMap(more => {
    const far = away + more, aslant = far * Math.SQRT1_2;
    return [[x + far, y - 7], [x - far - wide, y - 7], [x - wide / 2, y - far - 14], [x - wide / 2, y + far],
      [x + aslant, y - aslant - 14], [x - aslant - wide, y - aslant - 14], [x + aslant, y + aslant], [x - aslant - wide, y + aslant]]
      .map(([left, top]) => ({ left, right: left + wide, top, bottom: top + 14, isFar: more > 0 }));
  });
}

/** A line from a place to its name. */
function leadTo(context, box, x, y, radius) {
  const toX = Math.max(box.left, Math.min(x, box.right)), toY = Math.max(box.top, Math.min(y, box.bottom)), part = radius / Math.hypot(toX - x, toY - y);
  for (const [width, colour] of [[3, ink("paper")], [1, ink("ink")]]) {
    context.lineWidth = width; context.strokeStyle = colour;
    context.beginPath(); context.moveTo(x + (toX - x) * part, y + (toY - y) * part); context.lineTo(toX, toY); context.stroke();
  }
}

/** Names that find room near their places without covering another place or name; those that bind come first. */
function drawNames(context, shown) {
  const covers = (a, b) => !(a.left > b.right || a.right < b.left || a.top > b.bottom || a.bottom < b.top);
  const taken = shown.map(({ place, at: [x, y] }) => { const r = extentOf(place) + 2; return { left: x - r, right: x + r, top: y - r, bottom: y + r }; });
  taken.push({ left: view.width - 36, right: view.width, top: 0, bottom: 52 }, { left: 0, right: 170, top: view.height - 36, bottom: view.height });
  const order = Object.keys(MARK_LABELS);
  context.font = "600 12px system-ui, sans-serif"; context.textAlign = "left"; context.lineJoin = "round";
  for (const { place, at: [x, y] } of [...shown].sort((a, b) => order.indexOf(b.place.mark) - order.indexOf(a.place.mark))) {
    const text = shortLabel(place), wide = context.measureText(text).width, away = extentOf(place) + (place.mark === "none" ? 5 : 14);
    const box = nameBoxes(x, y, away, wide).find(one => one.left > 0 && one.right < view.width && one.top > 0 && one.bottom < view.height && taken.every(other => !covers(one, other)));
    if (!box) continue;
    taken.push(box);
    if (box.isFar) leadTo(context, box, x, y, away - 3);
    context.strokeStyle = ink("paper"); context.lineWidth = 4; context.strokeText(text, box.left, box.top + 11);
    context.fillStyle = ink("ink"); context.fillText(text, box.left, box.top + 11);
  }
}

/** Four corners about the place that is read, which leave its neighbours to be seen. */
function drawCorners(context, x, y, r) {
  for (const [width, colour] of [[4, ink("paper")], [2, ink("ink")]]) {
    context.lineWidth = width; context.strokeStyle = colour; context.beginPath();
    for (const [dx, dy] of [[1, 1], [-1, 1], [-1, -1], [1, -1]]) {
      context.moveTo(x + dx * (r - 6), y + dy * r); context.lineTo(x + dx * r, y + dy * r); context.lineTo(x + dx * r, y + dy * (r - 6));
    }
    context.stroke();
  }
}

function drawRates(context) {
  drawGround(context);
  const shown = plan.rates.places.map(place => ({ place, at: toPixel(place.x, place.y) }));
  // Large circles first, so that no small one is covered.
  [...shown].sort((a, b) => b.place.rate - a.place.rate).forEach(({ place, at }) => drawRatePlace(context, place, ...at));
  if (view.place) {
    const { mark, x, y } = view.place;
    drawCorners(context, ...toPixel(x, y), extentOf(view.place) + (mark === "gives_way" ? 14 : mark === "binds" ? 9 : 5));
  }
  drawNames(context, shown);
  showCircles(); showRateSymbols();
}

function legendItem(width, height, text, draw) {
  const item = document.createElement("li"), canvas = document.createElement("canvas");
  canvas.width = width; canvas.height = height;
  canvas.style.width = width + "px"; canvas.style.height = height + "px";
  draw(canvas.getContext("2d"));
  item.append(canvas, text);
  return item;
}

/** Circles of round rates as large as on the map. */
function showCircles() {
  const most = mostRate(), whole = roundStep(most / 2.5);
  const rates = most > 1e-6 ? [...new Set([whole / 4, whole, 2 * whole])].filter(rate => rate <= most * (1 + 1e-9)) : [];
  byId("map-scale").replaceChildren(...rates.map(rate => {
    const radius = radiusOf(rate), size = Math.ceil(2 * radius + 4);
    return legendItem(size, size, +rate.toPrecision(3) + " L/s", context =>
      drawRatePlace(context, { kind: "sharing", rate, mark: "none" }, size / 2, size / 2));
  }));
}

function showRateSymbols() {
  const places = plan.rates.places;
  const kinds = Object.keys(RATE_WORDS).filter(kind => kind !== "sharing" && places.some(place => place.kind === kind));
  const marks = Object.keys(MARK_WORDS).filter(mark => places.some(place => place.mark === mark));
  byId("map-symbols").replaceChildren(
    ...kinds.map(kind => legendItem(26, 22, RATE_WORDS[kind], context => drawRatePlace(context, { kind, rate: 0, mark: "none" }, 13, 11))),
    ...marks.map(mark => legendItem(44, 40, MARK_WORDS[mark], context => drawMark(context, mark, 22, 20, mark === "gives_way" ? 3 : 6))));
}

function readPlace(place) {
  view.place = place;
  byId("map-reading").textContent = place.name + " (" + (place.kind === "sharing" ? "bore" : RATE_WORDS[place.kind]) + ")"
    + (place.words.length ? ": " + place.words.join(". ") : "") + ".";
  drawMap();
}

const rateLayer = {
  draw: drawRates,
  read(x, y) {
    const away = place => Math.hypot(place.x - x, place.y - y) / view.metresPerPixel;
    const near = plan.rates.places.filter(place => away(place) <= Math.max(REACH, extentOf(place))).sort((a, b) => away(a) - away(b))[0];
    if (near && near !== view.place) readPlace(near);
  },
  /** The next place by easting or northing; places that are equal in it by the other. */
  move(east, north) {
    const order = [...plan.rates.places].sort((a, b) => east ? a.x - b.x || a.y - b.y : a.y - b.y || a.x - b.x);
    if (!order.length) return;
    const now = order.indexOf(view.place), next = now < 0 ? 0 : now + east + north;
    readPlace(order[Math.max(0, Math.min(order.length - 1, next))]);
    follow(view.place.x, view.place.y);
  },
};

async function showRates() {
  const map = plan.rates, width = map.x.length;
  grid.x = map.x; grid.y = map.y; grid.edgesX = edgesOf(map.x); grid.edgesY = edgesOf(map.y);
  grid.values.inside = (await unpackTables(map.inside, 1, width, width * map.y.length, Float32Array))[0];
  beginMap(rateLayer);
}
