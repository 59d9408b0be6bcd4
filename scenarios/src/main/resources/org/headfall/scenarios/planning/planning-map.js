// The map of cells: its colours and symbols.

const FIELDS = {
  rate: { words: "Largest rate", unit: "L/s", decimals: 1, high: true,
    meaning: "The largest steady rate of one new bore in a cell with which all counted limits are kept, without any other new bore." },
  lift: { words: "Lift", unit: "m", decimals: 1, high: false,
    meaning: "How far one new bore in a cell has to lift water, at most, if it takes the rate that was asked for, or the largest where that is less or none was asked for." },
  energy: { words: "Energy of lifting", unit: "kWh/ML", decimals: 0, high: false,
    meaning: "What lifting the water of one new bore in a cell takes, at most, if it takes the rate that was asked for, or the largest where that is less or none was asked for." },
  ruling: { words: "What decides", unit: "", decimals: 0, high: true,
    meaning: "Which limit or rule a new bore in a cell would break first if it took more, or why no bore may stand there." },
};
const GREY = " Grey: no bore may stand there, or nothing is left for it.";
const NOTHING = [150, 150, 150];
const RULING_COLOURS = ["#4477aa", "#ee6677", "#228833", "#ccbb44", "#66ccee", "#aa3377", "#999933", "#882255", "#44aa99", "#ddcc77"];

async function loadMap() {
  const map = plan.map, width = map.x.length, cells = width * map.y.length;
  grid.x = map.x; grid.y = map.y; grid.edgesX = edgesOf(map.x); grid.edgesY = edgesOf(map.y);
  const quanta = { rate: map.rateQuantum, lift: map.liftQuantum, energy: 1, ruling: 1 };
  await Promise.all(Object.keys(quanta).map(async name => {
    grid.values[name] = (await unpackTables(map[name], quanta[name], width, cells, Float32Array))[0];
  }));
}

/** Limits of the classes of a quantity: round numbers up to its largest value. */
function limitsOf(quantity) {
  let least = Infinity, most = -Infinity;
  for (let i = 0; i < grid.values.rate.length; i++) {
    const value = grid.values[quantity][i];
    if (grid.values.rate[i] > 0 && value < least) least = value;
    if (grid.values.rate[i] > 0 && value > most) most = value;
  }
  if (!(most > least)) return [];
  const step = roundStep((most - least) / 9), limits = [];
  for (let k = Math.floor(least / step) + 1; k * step < most; k++) limits.push(+(k * step).toPrecision(6));
  return limits;
}

/** Reasons that decide somewhere, the most frequent first. */
function reasonsSeen() {
  const counts = new Map();
  grid.values.ruling.forEach(reason => { if (!Number.isNaN(reason)) counts.set(reason, (counts.get(reason) || 0) + 1); });
  return [...counts.keys()].sort((a, b) => counts.get(b) - counts.get(a));
}

/** What colours stand for: a function from a cell to its colour, and the lines of the legend. */
function colouring() {
  const values = grid.values[view.quantity], field = FIELDS[view.quantity];
  if (view.quantity === "ruling") {
    const seen = reasonsSeen(), part = hex => [1, 3, 5].map(k => parseInt(hex.slice(k, k + 2), 16));
    const colours = new Map(seen.map((reason, k) => [reason, part(RULING_COLOURS[k % RULING_COLOURS.length])]));
    return { of: i => colours.get(values[i]), legend: seen.map(reason => [colours.get(reason), plan.map.reasons[reason]]) };
  }
  const limits = limitsOf(view.quantity), count = limits.length + 1;
  const colours = Array.from({ length: count }, (_, k) => mix(VIRIDIS, (field.high ? k : count - 1 - k) / Math.max(1, count - 1)));
  const names = colours.map((_, k) => count === 1 ? "all" : k === 0 ? "below " + words(limits[0], 1).replace(".0", "")
    : (k === limits.length ? "from " + words(limits[k - 1], 1).replace(".0", "") + " on"
      : words(limits[k - 1], 1).replace(".0", "") + " to " + words(limits[k], 1).replace(".0", "")));
  const of = i => {
    if (!(grid.values.rate[i] > 0)) return NOTHING;
    let k = 0;
    while (k < limits.length && values[i] >= limits[k]) k++;
    return colours[k];
  };
  return { of, legend: colours.map((colour, k) => [colour, names[k] + " " + field.unit]).concat([[NOTHING, "none"]]) };
}

function drawCells(context) {
  const { of, legend } = colouring();
  const image = context.createImageData(view.width, view.height), pixels = image.data;
  const columns = Array.from({ length: view.width }, (_, px) => indexOf(grid.edgesX, toGround(px + 0.5, 0)[0]));
  for (let py = 0, at = 0; py < view.height; py++) {
    const row = indexOf(grid.edgesY, toGround(0, py + 0.5)[1]);
    for (let px = 0; px < view.width; px++, at += 4) {
      const i = row * grid.x.length + columns[px];
      if (row < 0 || columns[px] < 0 || Number.isNaN(grid.values.rate[i])) continue;
      const colour = of(i);
      pixels[at] = colour[0]; pixels[at + 1] = colour[1]; pixels[at + 2] = colour[2]; pixels[at + 3] = 255;
    }
  }
  context.putImageData(image, 0, 0);
  plan.map.places.forEach(place => drawPlace(context, place));
  drawCell(context);
  showLegend(legend);
  byId("map-caption").textContent = FIELDS[view.quantity].meaning + (view.quantity === "ruling" ? "" : GREY);
}

const SHAPES = {
  site: (context, x, y) => context.arc(x, y, 8, 0, 2 * Math.PI),
  bore: (context, x, y) => context.arc(x, y, 4, 0, 2 * Math.PI),
  spring: (context, x, y) => { context.moveTo(x, y - 7); context.lineTo(x + 6, y + 4); context.lineTo(x - 6, y + 4); context.closePath(); },
  point: (context, x, y) => context.rect(x - 4, y - 4, 8, 8),
};
const FILLS = { site: "#ffffff", bore: "#22282b", spring: "#7cc4ec", point: "#f8edcf" };

function drawPlace(context, place) {
  const [x, y] = toPixel(place.x, place.y);
  context.beginPath();
  SHAPES[place.kind](context, x, y);
  context.fillStyle = FILLS[place.kind]; context.fill();
  context.lineWidth = place.kind === "site" ? 2.5 : 1.5;
  context.strokeStyle = place.kind === "bore" ? "#ffffff" : "#000000"; context.stroke();
  if (place.label) {
    context.font = "bold 11px system-ui, sans-serif"; context.textAlign = "center"; context.fillStyle = "#000000";
    context.fillText(place.label, x, y + 4);
  }
}

/** The frame of the cell that is read. */
function drawCell(context) {
  if (!view.cell) return;
  const [column, row] = view.cell;
  const [west, north] = toPixel(grid.edgesX[column], grid.edgesY[row + 1]), [east, south] = toPixel(grid.edgesX[column + 1], grid.edgesY[row]);
  const size = Math.max(6, east - west), height = Math.max(6, south - north);
  for (const [width, colour] of [[4, "#ffffff"], [2, "#000000"]]) {
    context.lineWidth = width; context.strokeStyle = colour;
    context.strokeRect((west + east - size) / 2, (north + south - height) / 2, size, height);
  }
}

function showLegend(lines) {
  const list = byId("map-scale");
  list.replaceChildren(...lines.map(([colour, text]) => {
    const item = document.createElement("li"), patch = document.createElement("i");
    patch.style.backgroundColor = rgb(colour);
    item.append(patch, text);
    return item;
  }));
}

const PLACE_WORDS = { site: "chosen site", bore: "bore of the document", spring: "spring", point: "protected point" };

function showSymbols() {
  const kinds = Object.keys(PLACE_WORDS).filter(kind => plan.map.places.some(place => place.kind === kind));
  byId("map-symbols").replaceChildren(...kinds.map(kind => {
    const item = document.createElement("li"), canvas = document.createElement("canvas");
    canvas.width = 26; canvas.height = 22;
    const context = canvas.getContext("2d");
    context.beginPath(); SHAPES[kind](context, 13, 11);
    context.fillStyle = FILLS[kind]; context.fill();
    context.lineWidth = 1.5; context.strokeStyle = kind === "bore" ? "#ffffff" : "#000000"; context.stroke();
    item.append(canvas, PLACE_WORDS[kind]);
    return item;
  }));
}
