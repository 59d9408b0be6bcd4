// Choosing the line of the section: one of those given, drawn on the map, or between two places.

function fillSectionLines() {
  byId("section-line").replaceChildren(...report.sections.map((line, i) => option(shortName(line.name), i)));
}

function chooseLine(index) {
  section.line = report.sections[index];
  byId("section-line").value = index;
  drawSection(); drawMap(true);
}

function addLine(name, fromX, fromY, toX, toY) {
  report.sections.push({ name, fromX, fromY, toX, toY });
  fillSectionLines(); chooseLine(report.sections.length - 1);
}

function addLineEnd(x, y) {
  section.drawing.push([x, y]);
  if (section.drawing.length < 2) { say("Now choose the end of the line."); return; }
  const [[fromX, fromY], [toX, toY]] = section.drawing;
  section.drawing = null;
  byId("section-draw").setAttribute("aria-pressed", "false");
  if (Math.hypot(toX - fromX, toY - fromY) < map.metresPerPixel) return;
  addLine("line drawn by the reader " + (report.sections.length + 1), fromX, fromY, toX, toY);
  say("The section now follows the line that you drew.");
}

/** A line from one site to another, a tenth longer at both ends. */
function addLineBetween(from, to) {
  if (from === to) { say("Choose two different places."); return; }
  const dx = (to.x - from.x) / 10, dy = (to.y - from.y) / 10;
  addLine(from.name + " to " + to.name, from.x - dx, from.y - dy, to.x + dx, to.y + dy);
}

function prepareSection() {
  const draw = byId("section-draw"), from = byId("section-from"), to = byId("section-to");
  fillSectionLines();
  byId("section-line").addEventListener("change", event => chooseLine(+event.target.value));
  for (const select of [from, to]) select.append(...report.sites.map((site, i) => option(shortName(site.name), i)));
  if (report.sites.length > 1) to.value = report.sites.length - 1;
  byId("section-between").addEventListener("click", () => addLineBetween(report.sites[from.value], report.sites[to.value]));
  draw.addEventListener("click", () => {
    section.drawing = section.drawing ? null : [];
    draw.setAttribute("aria-pressed", String(section.drawing !== null));
    if (section.drawing) {
      map.canvas.scrollIntoView({ block: "center" }); map.canvas.focus();
      byId("map-reading").textContent = "Choose the start of the line on the map, then its end: click, or move with the arrow keys and press Enter.";
    }
  });
}
