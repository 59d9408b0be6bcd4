// Brings the page to life: controls, keys, sizes, colour schemes and print.

function redraw() { drawMap(); drawSection(); }

function chooseDate(index) {
  map.date = index;
  document.getElementById("map-date").value = index;
  document.getElementById("map-date-words").textContent = dateWords(field.dates[index]);
  fillLegends(); redraw();
  if (map.cursor) read(...map.cursor);
}

function prepareMapControls() {
  const by = id => document.getElementById(id), quantity = by("map-quantity"), date = by("map-date");
  for (const key in QUANTITIES) {
    if (!QUANTITIES[key].needs || field[QUANTITIES[key].needs]) quantity.append(element("option", QUANTITIES[key].words, { value: key }));
  }
  quantity.addEventListener("change", () => { map.quantity = quantity.value; fillLegends(); drawMap(); });
  date.max = field.dates.length - 1;
  date.addEventListener("input", () => chooseDate(+date.value));
  let playing = null;
  by("map-play").addEventListener("click", event => {
    const button = event.currentTarget;
    if (playing) { clearInterval(playing); playing = null; } else {
      playing = setInterval(() => chooseDate((map.date + 1) % field.dates.length), Math.max(250, 8000 / Math.max(8, field.dates.length)));
    }
    button.setAttribute("aria-pressed", String(playing !== null));
    button.textContent = playing ? "Stop" : "Play";
  });
  by("map-field").addEventListener("click", () => { lookAtField(); drawMap(); });
  by("map-whole").addEventListener("click", () => { lookAt(...extentX, ...extentY); drawMap(); });
  by("map-in").addEventListener("click", () => zoom(0.6));
  by("map-out").addEventListener("click", () => zoom(1 / 0.6));
  document.querySelectorAll("form").forEach(form => form.addEventListener("submit", event => event.preventDefault()));
}

function zoom(factor, about) {
  const keep = about || map.centre;
  map.centre = [0, 1].map(i => keep[i] + (map.centre[i] - keep[i]) * factor);
  map.metresPerPixel *= factor;
  drawMap();
}

function pointerPlace(event) {
  const box = map.canvas.getBoundingClientRect();
  return toGround((event.clientX - box.left) * map.width / box.width, (event.clientY - box.top) * map.height / box.height);
}

function preparePointer() {
  let held = null;
  map.canvas.addEventListener("pointerdown", event => { held = { px: event.clientX, py: event.clientY, centre: map.centre, moved: false }; });
  window.addEventListener("pointerup", () => { setTimeout(() => { held = null; }, 0); });
  map.canvas.addEventListener("pointermove", event => {
    if (held && event.pointerType === "mouse" && Math.hypot(event.clientX - held.px, event.clientY - held.py) > 4) {
      held.moved = true;
      map.centre = [held.centre[0] - (event.clientX - held.px) * map.metresPerPixel, held.centre[1] + (event.clientY - held.py) * map.metresPerPixel];
      drawMap(); return;
    }
    read(...pointerPlace(event)); drawMap(true);
  });
  map.canvas.addEventListener("click", event => { if (!(held && held.moved)) pick(...pointerPlace(event)); });
  map.canvas.addEventListener("wheel", event => {
    if (!event.ctrlKey) return;
    event.preventDefault(); zoom(event.deltaY < 0 ? 0.8 : 1.25, pointerPlace(event));
  }, { passive: false });
}

/** A click or Enter on the map: a point of the line being drawn, or the site there. */
function pick(x, y) {
  read(x, y);
  if (map.drawing) {
    map.drawing.push([x, y]);
    if (map.drawing.length === 2) finishLine();
    else say("Now choose the end of the line.");
  } else {
    const site = siteAt(x, y);
    if (site) { chooseSite(site.name); say("Levels over time now show " + site.name); }
  }
  drawMap(true);
}

function finishLine() {
  const [[fromX, fromY], [toX, toY]] = map.drawing;
  map.drawing = null;
  document.getElementById("section-draw").setAttribute("aria-pressed", "false");
  if (Math.hypot(toX - fromX, toY - fromY) < map.metresPerPixel) return;
  report.sections.push({ name: "line drawn by the reader " + (report.sections.length + 1), fromX, fromY, toX, toY });
  fillSectionLines(); chooseLine(report.sections.length - 1);
}

function prepareKeys() {
  map.canvas.addEventListener("keydown", event => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key], from = map.cursor || map.centre;
    if (event.key === "+" || event.key === "=") zoom(0.6, from);
    else if (event.key === "-") zoom(1 / 0.6, from);
    else if (event.key === "Enter") pick(...from);
    else if (step && event.shiftKey) { map.centre = map.centre.map((c, i) => c + step[i] * 60 * map.metresPerPixel); drawMap(); }
    else if (step) { read(...from.map((c, i) => c + step[i] * 10 * map.metresPerPixel)); drawMap(true); }
    else return;
    event.preventDefault();
  });
}

function fillSectionLines() {
  document.getElementById("section-line").replaceChildren(...report.sections.map((line, i) => element("option", shortName(line.name), { value: i })));
}

function chooseLine(index) {
  section.line = map.line = report.sections[index];
  document.getElementById("section-line").value = index;
  drawSection(); drawMap(true);
}

function prepareSection() {
  const button = document.getElementById("section-draw");
  fillSectionLines();
  map.line = section.line;
  document.getElementById("section-line").addEventListener("change", event => chooseLine(+event.target.value));
  button.addEventListener("click", () => {
    map.drawing = map.drawing ? null : [];
    button.setAttribute("aria-pressed", String(map.drawing !== null));
    if (map.drawing) {
      map.canvas.scrollIntoView({ block: "center" }); map.canvas.focus();
      document.getElementById("map-reading").textContent = "Choose the start of the line on the map, then its end.";
    }
  });
}

function prepareHydrographs() {
  const select = document.getElementById("hydrograph-site");
  for (const entry of report.hydrographs) select.append(element("option", shortName(entry.site), { value: entry.site }));
  select.addEventListener("change", () => chooseSite(select.value));
  if (report.hydrographs.length) chooseSite(report.hydrographs[0].site);
}

function resizeCharts() {
  const width = Math.max(240, document.getElementById("hydrograph-level").clientWidth);
  hydrograph.charts.forEach(chart => { if (chart.width !== width) chart.setSize({ width, height: chart.height }); });
}

function prepareSizes() {
  let width = document.body.clientWidth;
  new ResizeObserver(() => {
    if (document.body.clientWidth === width) return;
    width = document.body.clientWidth;
    redraw(); resizeCharts();
  }).observe(document.body);
  const again = () => { redraw(); drawHydrograph(); };
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
  matchMedia("print").addEventListener("change", again);
}

document.querySelectorAll(".table").forEach(prepareTable);
[map.width, map.height] = mapSize();
lookAtField();
prepareMapControls(); prepareSection(); preparePointer(); prepareKeys();
chooseDate(field.dates.length - 1);
prepareHydrographs(); prepareSizes();
