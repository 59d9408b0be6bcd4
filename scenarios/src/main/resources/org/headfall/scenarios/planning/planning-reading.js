// Reading the map by pointer and keys; moving and zooming it.

const NEAR = 12;

function readCell(column, row) {
  view.cell = [Math.max(0, Math.min(grid.x.length - 1, column)), Math.max(0, Math.min(grid.y.length - 1, row))];
  const [i, j] = view.cell, at = j * grid.x.length + i, rate = grid.values.rate[at];
  const where = "Easting " + words(grid.x[i] / 1000, 2) + " km, northing " + words(grid.y[j] / 1000, 2) + " km: ";
  const near = plan.map.places.filter(place => {
    const [px, py] = toPixel(place.x, place.y), [cx, cy] = toPixel(grid.x[i], grid.y[j]);
    return Math.hypot(px - cx, py - cy) < NEAR;
  }).map(place => place.name + " (" + PLACE_WORDS[place.kind] + ")").join(", ");
  const reason = plan.map.reasons[grid.values.ruling[at]];
  byId("map-reading").textContent = where + (Number.isNaN(rate) ? "no aquifer"
    : rate > 0 ? "up to " + words(rate, 1) + " L/s, decided by: " + reason + "; lift " + words(grid.values.lift[at], 1) + " m, "
      + words(grid.values.energy[at], 0) + " kWh/ML"
      : "no new bore: " + reason) + (near ? ". Here: " + near : "");
  drawMap();
}

function zoom(factor, px = view.width / 2, py = view.height / 2) {
  const [x, y] = toGround(px, py);
  view.metresPerPixel *= factor;
  view.centre = [x - (px - view.width / 2) * view.metresPerPixel, y + (py - view.height / 2) * view.metresPerPixel];
  drawMap();
}

/** Keeps the cell that is read in view. */
function follow() {
  const [px, py] = toPixel(grid.x[view.cell[0]], grid.y[view.cell[1]]);
  if (px < 0 || py < 0 || px > view.width || py > view.height) {
    view.centre = [grid.x[view.cell[0]], grid.y[view.cell[1]]];
    drawMap();
  }
}

function onKey(event) {
  const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  if (steps[event.key]) {
    const far = event.shiftKey ? 10 : 1, [i, j] = view.cell || [grid.x.length >> 1, grid.y.length >> 1];
    readCell(i + far * steps[event.key][0], j + far * steps[event.key][1]);
    follow();
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
  const read = event => {
    const [x, y] = toGround(...place(event)), column = indexOf(grid.edgesX, x), row = indexOf(grid.edgesY, y);
    if (column >= 0 && row >= 0 && !(view.cell && view.cell[0] === column && view.cell[1] === row)) readCell(column, row);
  };
  view.canvas.addEventListener("pointerdown", event => { from = { at: place(event), centre: view.centre }; view.canvas.setPointerCapture(event.pointerId); read(event); });
  view.canvas.addEventListener("pointermove", event => {
    if (!from) { read(event); return; }
    const [px, py] = place(event);
    view.centre = [from.centre[0] - (px - from.at[0]) * view.metresPerPixel, from.centre[1] + (py - from.at[1]) * view.metresPerPixel];
    drawMap();
  });
  for (const end of ["pointerup", "pointercancel"]) view.canvas.addEventListener(end, () => { from = null; });
}

async function showMap() {
  view.canvas = byId("map");
  await loadMap();
  sizeMap(); lookAtWhole();
  choice(byId("map-quantity"), Object.keys(FIELDS).map(key => [key, FIELDS[key].words + (FIELDS[key].unit ? " (" + FIELDS[key].unit + ")" : "")]));
  byId("map-quantity").addEventListener("change", event => { view.quantity = event.target.value; drawMap(); });
  byId("map-whole").addEventListener("click", () => { lookAtWhole(); drawMap(); });
  byId("map-in").addEventListener("click", () => zoom(0.7));
  byId("map-out").addEventListener("click", () => zoom(1 / 0.7));
  view.canvas.addEventListener("keydown", onKey);
  onPointer();
  showSymbols();
  drawMap();
}

function resizeMap() {
  const before = view.width;
  sizeMap();
  view.metresPerPixel *= before / view.width;
  drawMap();
}
