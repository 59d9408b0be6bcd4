// The view of a map: where it looks, its scale, and moving and zooming it. What it draws and reads is its layer: cells or rates.

const grid = { x: [], y: [], edgesX: [], edgesY: [], values: {} };
const view = { canvas: null, layer: null, quantity: "rate", width: 0, height: 0, centre: [0, 0], metresPerPixel: 1, seen: [0, 0], cell: null, place: null };

/** Edges of cells of which the centres are known: halfway between them. */
function edgesOf(centres) {
  const edges = [];
  for (let i = 0; i <= centres.length; i++) {
    const before = i > 0 ? centres[i - 1] : centres[0] - (centres[1] - centres[0]);
    const after = i < centres.length ? centres[i] : centres[i - 1] + (centres[i - 1] - centres[i - 2]);
    edges.push((before + after) / 2);
  }
  return edges;
}

/** Number of the cell along an axis that holds a place, -1 outside. */
function indexOf(edges, place) {
  if (!(place >= edges[0] && place < edges[edges.length - 1])) return -1;
  let low = 0, high = edges.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (edges[middle] <= place) low = middle; else high = middle;
  }
  return low;
}

const toPixel = (x, y) => [view.width / 2 + (x - view.centre[0]) / view.metresPerPixel,
  view.height / 2 - (y - view.centre[1]) / view.metresPerPixel];
const toGround = (px, py) => [view.centre[0] + (px - view.width / 2) * view.metresPerPixel,
  view.centre[1] - (py - view.height / 2) * view.metresPerPixel];

function lookAtWhole() {
  const [west, east] = [grid.edgesX[0], grid.edgesX.at(-1)], [south, north] = [grid.edgesY[0], grid.edgesY.at(-1)];
  view.centre = [(west + east) / 2, (south + north) / 2];
  view.seen = [east - west, north - south];
  fitSeen();
}

/** The largest scale at which what was in sight (m by m) still is: paper has another shape than a screen. */
function fitSeen() {
  view.metresPerPixel = Math.max(view.seen[0] / view.width, view.seen[1] / view.height);
}

function sizeMap() {
  const shape = (grid.edgesY.at(-1) - grid.edgesY[0]) / (grid.edgesX.at(-1) - grid.edgesX[0]);
  view.width = Math.max(240, view.canvas.parentElement.clientWidth);
  view.height = Math.round(Math.min(isPrinted() ? 420 : 620, Math.max(240, view.width * shape)));
  view.canvas.width = view.width; view.canvas.height = view.height;
}

function drawMap() {
  const context = view.canvas.getContext("2d");
  view.layer.draw(context);
  drawScale(context);
}

/** A length in round numbers and an arrow to the north, with a rim so that they show on any colour. */
function drawScale(context) {
  const most = view.metresPerPixel * Math.min(140, view.width / 3), power = 10 ** Math.floor(Math.log10(most));
  const length = [5, 2, 1].map(n => n * power).find(n => n <= most), x = 12, y = view.height - 12, wide = length / view.metresPerPixel, top = view.width - 20;
  context.font = "600 12px system-ui, sans-serif"; context.textAlign = "center";
  for (const [colour, width] of [[ink("paper"), 5], [ink("ink"), 2]]) {
    context.strokeStyle = colour; context.lineWidth = width;
    context.beginPath();
    context.moveTo(x, y - 5); context.lineTo(x, y); context.lineTo(x + wide, y); context.lineTo(x + wide, y - 5);
    context.moveTo(top, 30); context.lineTo(top, 10); context.moveTo(top - 5, 17); context.lineTo(top, 10); context.lineTo(top + 5, 17);
    context.stroke();
  }
  for (const [text, tx, ty] of [[length >= 1000 ? length / 1000 + " km" : length + " m", x + wide / 2, y - 9], ["N", top, 45]]) {
    context.strokeStyle = ink("paper"); context.lineWidth = 4; context.lineJoin = "round"; context.strokeText(text, tx, ty);
    context.fillStyle = ink("ink"); context.fillText(text, tx, ty);
  }
}

function zoom(factor, px = view.width / 2, py = view.height / 2) {
  const [x, y] = toGround(px, py);
  view.metresPerPixel *= factor;
  view.seen = [view.width * view.metresPerPixel, view.height * view.metresPerPixel];
  view.centre = [x - (px - view.width / 2) * view.metresPerPixel, y + (py - view.height / 2) * view.metresPerPixel];
  drawMap();
}

/** Keeps a place that is read in view. */
function follow(x, y) {
  const [px, py] = toPixel(x, y);
  if (px < 0 || py < 0 || px > view.width || py > view.height) {
    view.centre = [x, y];
    drawMap();
  }
}

function onKey(event) {
  const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  if (steps[event.key]) {
    view.layer.move(...steps[event.key], event.shiftKey);
  } else if (event.key === "+" || event.key === "-") {
    zoom(event.key === "+" ? 0.7 : 1 / 0.7);
  } else {
    return;
  }
  event.preventDefault();
}

function onPointer() {
  let from = null;
  const place = event => { const box = view.canvas.getBoundingClientRect(); return [(event.clientX - box.left) * view.width / box.width, (event.clientY - box.top) * view.height / box.height]; };
  const read = event => view.layer.read(...toGround(...place(event)));
  view.canvas.addEventListener("pointerdown", event => { from = { at: place(event), centre: view.centre }; view.canvas.setPointerCapture(event.pointerId); read(event); });
  view.canvas.addEventListener("pointermove", event => {
    if (!from) { read(event); return; }
    const [px, py] = place(event);
    view.centre = [from.centre[0] - (px - from.at[0]) * view.metresPerPixel, from.centre[1] + (py - from.at[1]) * view.metresPerPixel];
    drawMap();
  });
  for (const end of ["pointerup", "pointercancel"]) view.canvas.addEventListener(end, () => { from = null; });
}

/** Puts a layer on the map of the page. */
function beginMap(layer) {
  view.canvas = byId("map");
  view.layer = layer;
  sizeMap(); lookAtWhole();
  byId("map-whole").addEventListener("click", () => { lookAtWhole(); drawMap(); });
  byId("map-in").addEventListener("click", () => zoom(0.7));
  byId("map-out").addEventListener("click", () => zoom(1 / 0.7));
  view.canvas.addEventListener("keydown", onKey);
  onPointer();
  drawMap();
}

function resizeMap() {
  sizeMap();
  fitSeen();
  drawMap();
}
