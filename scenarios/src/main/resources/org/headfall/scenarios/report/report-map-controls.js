// What the reader does to the map: choose, play, zoom, point, click, and all of it by keys as well.

function redraw() { drawMap(); drawSection(); }

function chooseDate(index) {
  map.date = index;
  byId("map-date").value = index;
  byId("map-date").setAttribute("aria-valuetext", dateWords(field.dates[index]));
  byId("map-date-words").textContent = dateWords(field.dates[index]);
  fillSymbols(); redraw();
  if (map.cursor) read(...map.cursor);
}

function chooseQuantity(key) {
  map.quantity = key;
  byId("map-quantity").value = key;
  fillLegend(); drawMap();
}

function preparePlay() {
  let playing = null;
  byId("map-play").addEventListener("click", event => {
    const button = event.currentTarget;
    if (playing) { clearInterval(playing); playing = null; } else {
      const pause = Math.max(250, 8000 / Math.max(8, field.dates.length));
      playing = setInterval(() => chooseDate((map.date + 1) % field.dates.length), pause);
    }
    button.setAttribute("aria-pressed", String(playing !== null));
    button.textContent = playing ? "Stop" : "Play";
  });
}

function prepareMapControls() {
  const quantity = byId("map-quantity"), date = byId("map-date");
  quantity.append(...shownQuantities().map(key => option(QUANTITIES[key].words, key)));
  quantity.addEventListener("change", () => chooseQuantity(quantity.value));
  date.max = field.dates.length - 1;
  date.addEventListener("input", () => chooseDate(+date.value));
  preparePlay();
  byId("map-field").addEventListener("click", () => { lookAtField(); drawMap(); });
  byId("map-whole").addEventListener("click", () => { lookAtWhole(); drawMap(); });
  byId("map-in").addEventListener("click", () => zoom(0.6));
  byId("map-out").addEventListener("click", () => zoom(1 / 0.6));
  byId("map-overlay").addEventListener("change", event => {
    for (const file of event.target.files) {
      file.text().then(text => { byId("map-reading").textContent = addOverlay(file.name, text); drawMap(); });
    }
  });
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
  map.canvas.addEventListener("pointerdown", event => {
    held = { px: event.clientX, py: event.clientY, centre: map.centre, moved: false };
  });
  window.addEventListener("pointerup", () => { setTimeout(() => { held = null; }, 0); });
  map.canvas.addEventListener("pointermove", event => {
    if (held && event.pointerType === "mouse" && Math.hypot(event.clientX - held.px, event.clientY - held.py) > 4) {
      held.moved = true;
      map.centre = [held.centre[0] - (event.clientX - held.px) * map.metresPerPixel,
        held.centre[1] + (event.clientY - held.py) * map.metresPerPixel];
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

/** A click or Enter on the map: an end of the line being drawn, or the site there. */
function pick(x, y) {
  read(x, y);
  if (section.drawing) addLineEnd(x, y);
  else {
    const site = siteAt(x, y);
    if (site) { chooseSite(site.name); say("Levels over time now show " + site.name); }
  }
  drawMap(true);
}

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

function prepareMapKeys() {
  map.canvas.addEventListener("keydown", event => {
    const step = ARROWS[event.key], from = map.cursor || map.centre;
    if (event.key === "+" || event.key === "=") zoom(0.6, from);
    else if (event.key === "-") zoom(1 / 0.6, from);
    else if (event.key === "Enter") pick(...from);
    else if (step && event.shiftKey) { map.centre = map.centre.map((c, i) => c + step[i] * 60 * map.metresPerPixel); drawMap(); }
    else if (step) { read(...from.map((c, i) => c + step[i] * 10 * map.metresPerPixel)); drawMap(true); }
    else return;
    event.preventDefault();
  });
}
