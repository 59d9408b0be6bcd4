// The map of who takes how much from whom: a circle at each bore, its area the bore's share, about the place that is chosen.

/** View of the map. `looks` says what it keeps in sight: all places, the chosen one and its causes, or what the reader zoomed to. */
const takenMap = { canvas: byId("taken-map"), centre: [0, 0], metresPerPixel: 1, width: 0, height: 0, looks: "all" };

const TAKES = "rgba(116, 54, 9, 0.45)", GIVES = "rgba(13, 68, 116, 0.35)", MAP_PAPER = "#faf9f5";

/** Radius of a circle that stands for everything (px). */
const wholeRadius = () => Math.max(40, Math.min(60, takenMap.width * 0.09));

/** Circles of the bores whose part does not round to nothing, the largest first. */
function circlesOf(found) {
  const sizes = found.bores.reduce((sum, part) => sum + Math.abs(part.amount), 0);
  const base = found.whyNot ? sizes : Math.abs(found.all.amount);
  return found.bores.filter(part => part.site && part.shown !== 0).map(part => {
    const [px, py] = toPixel(part.site.x, part.site.y, takenMap);
    return { part, px, py, r: wholeRadius() * Math.sqrt(Math.abs(part.amount) / base) };
  });
}

/** A disc; of a bore that raised head hatched, with a broken rim. */
function takenDisc(context, px, py, r, amount, read) {
  context.beginPath(); context.arc(px, py, r, 0, 7);
  context.fillStyle = amount > 0 ? TAKES : GIVES; context.fill();
  if (amount < 0) {
    context.save(); context.clip(); context.beginPath();
    for (let d = -2 * r; d < 2 * r; d += 6) { context.moveTo(px + d - r, py + r); context.lineTo(px + d + r, py - r); }
    context.strokeStyle = "#0d4474"; context.lineWidth = 1.2; context.stroke(); context.restore();
    context.beginPath(); context.arc(px, py, r, 0, 7);
  }
  context.strokeStyle = amount > 0 ? "#743609" : "#0d4474"; context.lineWidth = read ? 4 : 1.5;
  context.setLineDash(amount > 0 ? [] : [4, 3]); context.stroke(); context.setLineDash([]);
}

/** A symbol of the map, smaller, so that it leaves circles to be seen. */
function smallSymbol(context, kind, state, px, py) {
  context.save(); context.translate(px, py); context.scale(0.65, 0.65);
  symbol(context, kind, state, 0, 0);
  context.restore();
}

/** The ring about the place that is chosen. */
function chosenRing(context, px, py) {
  for (const [colour, width] of [["#fff", 6], ["#0b5d6b", 3]]) {
    context.beginPath(); context.arc(px, py, 13, 0, 7); context.strokeStyle = colour; context.lineWidth = width; context.stroke();
  }
}

/** An item of the legend: a circle as large as that of a share on the map. */
function areaItem(share, words) {
  const r = wholeRadius() * Math.sqrt(share), size = Math.ceil(2 * r + 4), item = element("li");
  const canvas = element("canvas", null, { width: 2 * size, height: 2 * size, "aria-hidden": "true" }), context = canvas.getContext("2d");
  canvas.style.width = canvas.style.height = size + "px";
  context.scale(2, 2);
  context.beginPath(); context.arc(size / 2, size / 2, r, 0, 7);
  context.strokeStyle = ink("ink"); context.lineWidth = 1.5; context.stroke();
  item.append(canvas, words);
  return item;
}

/** Boxes of a label farther from a disc, the nearest first; a line joins them with it. */
function farBoxes({ px, py, r }, wide, high) {
  return [14, 30, 48, 70].flatMap(more => {
    const away = r + 4 + more, aslant = away * Math.SQRT1_2;
    return [[px - wide / 2, py + away], [px - wide / 2, py - away - high], [px + away, py - high / 2], [px - away - wide, py - high / 2],
      [px + aslant, py + aslant], [px - aslant - wide, py + aslant], [px + aslant, py - aslant - high], [px - aslant - wide, py - aslant - high]];
  });
}

/** A line from the rim of a disc to the nearest point of the box of its label. */
function leadTo(context, box, { px, py, r }) {
  const x = Math.max(box.left, Math.min(px, box.right)), y = Math.max(box.top, Math.min(py, box.bottom)), part = r / Math.hypot(x - px, y - py);
  rimmed(context, 1, () => { context.moveTo(px + (x - px) * part, py + (y - py) * part); context.lineTo(x, y); });
}

/**
 * Lines of a label beside a disc: below, above, right or left, otherwise farther away, where they cover no symbol and no label,
 * if that can be no other disc either; otherwise none.
 */
function takenLabel(context, lines, { px, py, r }, taken, discs) {
  const wide = Math.max(...lines.map(line => context.measureText(line).width)), high = 14 * lines.length;
  const middle = Math.max(2, Math.min(takenMap.width - wide - 2, px - wide / 2));
  const near = [[middle, py + r + 3], [middle, py - r - 3 - high], [px + r + 4, py - high / 2], [px - r - 4 - wide, py - high / 2]];
  const free = [...near, ...farBoxes({ px, py, r }, wide, high)]
    .map(([left, top], i) => ({ left, right: left + wide, top, bottom: top + high, far: i >= near.length }))
    .filter(box => box.left > 0 && box.right < takenMap.width && box.top > 0 && box.bottom < takenMap.height
      && taken.every(other => !overlap(box, other)));
  const place = free.find(box => discs.every(disc => !isOver(box, disc))) || free[0];
  if (!place) return;
  taken.push(place);
  if (place.far) leadTo(context, place, { px, py, r });
  lines.forEach((line, i) => haloText(context, line, place.left + wide / 2, place.top + 11 + 14 * i, "center"));
}

/** Whether a box covers a part of a disc. */
function isOver(box, { px, py, r }) {
  return Math.hypot(Math.max(box.left - px, 0, px - box.right), Math.max(box.top - py, 0, py - box.bottom)) < r;
}

/** Labels of the chosen place, the circles and then of other places, each where it covers nothing. */
function labelTaken(context, found, circles, sites) {
  const boxes = sites.map(({ at }) => ({ left: at[0] - 6, right: at[0] + 6, top: at[1] - 6, bottom: at[1] + 6 }));
  boxes.push({ left: takenMap.width - 36, right: takenMap.width, top: 0, bottom: 52 }, { left: 0, right: 170, top: takenMap.height - 36, bottom: takenMap.height });
  const named = new Set([found.place]), amount = part => amountWords(part, found) + (part.share === null ? "" : " \u00b7 " + shareWords(part));
  const own = circles.find(circle => circle.part.name === found.place), chosen = sites.find(({ site }) => site.name === found.place);
  context.font = "600 13px system-ui, sans-serif";
  if (chosen) {
    const ring = { px: chosen.at[0], py: chosen.at[1], r: Math.max(15, own ? own.r : 0) };
    takenLabel(context, [shortName(found.place), ...own ? [amount(own.part)] : []], ring, boxes, circles);
  }
  context.font = "12px system-ui, sans-serif";
  for (const { part, px, py, r } of circles) {
    if (named.has(part.name)) continue;
    named.add(part.name);
    takenLabel(context, [shortName(part.name), amount(part)], { px, py, r: Math.max(8, r) }, boxes, circles);
  }
  for (const { site, at: [px, py] } of sites) {
    if (!named.has(site.name)) takenLabel(context, [shortName(site.name)], { px, py, r: 8 }, boxes, circles);
  }
}

function drawTaken(found) {
  const { canvas } = takenMap, ratio = window.devicePixelRatio || 1, context = canvas.getContext("2d");
  [takenMap.width, takenMap.height] = mapSize(takenMap);
  if (takenMap.looks !== "zoomed") lookAtTaken();
  canvas.width = takenMap.width * ratio; canvas.height = takenMap.height * ratio;
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = "#d9d7d0"; context.fillRect(0, 0, takenMap.width, takenMap.height);
  const [west, north] = toPixel(extentX[0], extentY[1], takenMap), [east, south] = toPixel(extentX[1], extentY[0], takenMap);
  context.fillStyle = MAP_PAPER; context.fillRect(west, north, east - west, south - north);
  const shown = Math.max(0, field.dates.indexOf(report.attribution.dates[taken.date]));
  const sites = report.sites.map(site => ({ site, at: toPixel(site.x, site.y, takenMap) }))
    .filter(({ at }) => at[0] > -10 && at[1] > -10 && at[0] < takenMap.width + 10 && at[1] < takenMap.height + 10);
  const circles = circlesOf(found);
  for (const { part, px, py, r } of circles) takenDisc(context, px, py, r, part.amount, part.bore === taken.cause);
  for (const { site, at } of sites) {
    if (site.name === found.place) chosenRing(context, ...at);
    smallSymbol(context, site.kind, site.states[shown][0], ...at);
  }
  labelTaken(context, found, circles, sites);
  drawScaleAndNorth(context, takenMap);
  fillTakenLegend(found);
}

function fillTakenLegend(found) {
  const present = sign => found.bores.some(part => Math.sign(part.shown) === sign);
  const verb = found.quantity === "drawdown" ? ["lowers head at the place", "raises head at the place"] : ["takes discharge away", "gives discharge back"];
  const item = (words, draw) => legendItem(words, context => { context.fillStyle = MAP_PAPER; context.fillRect(0, 0, 30, 28); draw(context); });
  byId("taken-legend").replaceChildren(
    item("the place that is chosen", context => chosenRing(context, 15, 14)),
    ...present(1) ? [item(verb[0], context => takenDisc(context, 15, 14, 11, 1, false))] : [],
    ...present(-1) ? [item(verb[1] + " (amounts with a minus sign)", context => takenDisc(context, 15, 14, 11, -1, false))] : [],
    ...[0.5, 0.1].map(share => areaItem(share, 100 * share + "\u00a0%" + (found.whyNot ? " of all parts without their signs" : " of the whole"))));
}

/** Moves the view to what it keeps in sight, or, zoomed by the reader, to the chosen place if that is out of sight. */
function lookAtTaken() {
  const chosen = siteNamed(report.attribution.places[taken.place]);
  [takenMap.width, takenMap.height] = mapSize(takenMap);
  if (takenMap.looks === "zoomed") {
    const [px, py] = toPixel(chosen.x, chosen.y, takenMap);
    if (px < 20 || py < 20 || px > takenMap.width - 20 || py > takenMap.height - 20) takenMap.centre = [chosen.x, chosen.y];
    return;
  }
  const { bores, all } = partsOfTaken();
  const causes = bores.filter(part => part.site && Math.abs(part.amount) >= 0.02 * Math.abs(all.amount)).map(part => part.site);
  lookAtPlaces(takenMap.looks === "all" ? report.sites : [chosen, ...causes], takenMap);
}

function zoomTaken(factor) {
  const chosen = siteNamed(report.attribution.places[taken.place]);
  takenMap.centre = [chosen.x, chosen.y];
  takenMap.metresPerPixel *= factor;
  takenMap.looks = "zoomed";
  drawTaken(partsOfTaken());
}

function lookAtTakenBy(looks) { takenMap.looks = looks; drawTaken(partsOfTaken()); }

/** Pixels of the map under a pointer. */
function takenPixel(event) {
  const box = takenMap.canvas.getBoundingClientRect();
  return [(event.clientX - box.left) * takenMap.width / box.width, (event.clientY - box.top) * takenMap.height / box.height];
}

/** Bore of the smallest circle about a pixel, or null. */
function boreUnder([px, py]) {
  const hit = circlesOf(partsOfTaken()).filter(circle => Math.hypot(circle.px - px, circle.py - py) <= Math.max(10, circle.r));
  return hit.length ? hit[hit.length - 1].part.bore : null;
}

/** The place of the list nearest to a pixel, if it is near enough for a finger; otherwise undefined. */
function placeUnder([px, py]) {
  const away = place => {
    const site = siteNamed(report.attribution.places[place]), at = toPixel(site.x, site.y, takenMap);
    return Math.hypot(at[0] - px, at[1] - py);
  };
  return d3.least(takenPlaces().filter(place => away(place) <= 20), away);
}

/** The next of some things after another, or before it, around the end. */
function following(things, from, step) {
  return things[(things.indexOf(from) + step + things.length) % things.length];
}

function takenKey(event) {
  const { canvas } = takenMap, places = takenPlaces(), bores = partsOfTaken().bores.filter(part => part.shown !== 0).map(part => part.bore);
  const keys = {
    ArrowLeft: () => chooseTaken({ place: following(places, taken.place, -1) }),
    ArrowRight: () => chooseTaken({ place: following(places, taken.place, 1) }),
    ArrowUp: () => bores.length && readTaken(taken.cause === null ? bores[bores.length - 1] : following(bores, taken.cause, -1)),
    ArrowDown: () => bores.length && readTaken(following(bores, taken.cause, 1)),
    "+": () => zoomTaken(0.6), "=": () => zoomTaken(0.6), "-": () => zoomTaken(1 / 0.6), Escape: () => readTaken(null),
  };
  if (!keys[event.key] || event.ctrlKey || event.altKey || event.metaKey || document.activeElement !== canvas) return;
  keys[event.key]();
  event.preventDefault();
}

function prepareTakenMap() {
  const { canvas } = takenMap;
  byId("taken-all").addEventListener("click", () => lookAtTakenBy("all"));
  byId("taken-causes").addEventListener("click", () => lookAtTakenBy("causes"));
  byId("taken-in").addEventListener("click", () => zoomTaken(0.6));
  byId("taken-out").addEventListener("click", () => zoomTaken(1 / 0.6));
  canvas.addEventListener("pointermove", event => readTaken(boreUnder(takenPixel(event))));
  canvas.addEventListener("pointerleave", event => { if (event.pointerType === "mouse") readTaken(null); });
  canvas.addEventListener("click", event => {
    const pixel = takenPixel(event), place = placeUnder(pixel);
    if (place === undefined) readTaken(boreUnder(pixel)); else chooseTaken({ place });
  });
  canvas.addEventListener("keydown", takenKey);
}
