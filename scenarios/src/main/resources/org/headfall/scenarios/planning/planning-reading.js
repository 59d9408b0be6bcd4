// Reading the map of cells by pointer and keys.

/** How near on the map (px) a place outside of the cell is told of. */
const NEAR = 12;

/** Places in a cell, and those that a finger on it could mean, with how far from its centre they are. */
function placesAbout(i, j) {
  const here = [], near = [];
  for (const place of plan.map.places) {
    const name = place.name + " (" + PLACE_WORDS[place.kind] + ")", away = Math.hypot(place.x - grid.x[i], place.y - grid.y[j]);
    if (indexOf(grid.edgesX, place.x) === i && indexOf(grid.edgesY, place.y) === j) here.push(name);
    else if (away < NEAR * view.metresPerPixel) near.push(name + ", " + (away / 1000).toFixed(1) + " km away");
  }
  return (here.length ? ". Here: " + here.join(", ") : "") + (near.length ? ". Near: " + near.join("; ") : "");
}

function readCell(column, row) {
  view.cell = [Math.max(0, Math.min(grid.x.length - 1, column)), Math.max(0, Math.min(grid.y.length - 1, row))];
  const [i, j] = view.cell, at = j * grid.x.length + i, rate = grid.values.rate[at];
  const where = "Easting " + (grid.x[i] / 1000).toFixed(2) + " km, northing " + (grid.y[j] / 1000).toFixed(2) + " km: ";
  const reason = plan.map.reasons[grid.values.ruling[at]];
  byId("map-reading").textContent = where + (Number.isNaN(rate) ? "no aquifer"
    : rate > 0 ? "up to " + words(rate, 1) + " L/s, decided by: " + reason + "; lift " + words(grid.values.lift[at], 1) + " m, "
      + words(grid.values.energy[at], 0) + " kWh/ML"
      : "no new bore: " + reason) + placesAbout(i, j);
  drawMap();
}

const cellLayer = {
  draw: drawCells,
  read(x, y) {
    const column = indexOf(grid.edgesX, x), row = indexOf(grid.edgesY, y);
    if (column >= 0 && row >= 0 && !(view.cell && view.cell[0] === column && view.cell[1] === row)) readCell(column, row);
  },
  move(east, north, isFar) {
    const far = isFar ? 10 : 1, [i, j] = view.cell || [grid.x.length >> 1, grid.y.length >> 1];
    readCell(i + far * east, j + far * north);
    follow(grid.x[view.cell[0]], grid.y[view.cell[1]]);
  },
};

async function showMap() {
  await loadMap();
  choice(byId("map-quantity"), Object.keys(FIELDS).map(key => [key, FIELDS[key].words + (FIELDS[key].unit ? " (" + FIELDS[key].unit + ")" : "")]));
  byId("map-quantity").addEventListener("change", event => { view.quantity = event.target.value; drawMap(); });
  showSymbols();
  beginMap(cellLayer);
}
