// Brings the page to life: first what needs no unpacking, then the figures.

function prepareSizes() {
  let width = document.body.clientWidth;
  new ResizeObserver(() => {
    if (document.body.clientWidth === width) return;
    width = document.body.clientWidth;
    redraw(); resizeCharts();
    if (report.attribution) showTaken();
  }).observe(document.body);
  const again = () => { redraw(); drawHydrograph(); drawBalance(); if (report.whatIf) drawShares(); if (report.attribution) showTaken(); };
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
  matchMedia("print").addEventListener("change", again);
}

/** Lets the browser paint before the next part of the work. */
const painted = () => new Promise(go => setTimeout(go, 0));

async function start() {
  document.querySelectorAll(".table").forEach(prepareTable);
  prepareUnits();
  await painted();
  await loadSeries();
  await loadField();
  [map.width, map.height] = mapSize();
  lookAtAnswer();
  prepareMapControls(); prepareSection(); preparePointer(); prepareMapKeys();
  fillLegend(); chooseDate(field.dates.length - 1);
  unitListeners.push(() => { fillLegend(); redraw(); drawHydrograph(); if (map.cursor) read(...map.cursor); });
  prepareHydrographs(); prepareBalance(); prepareSizes(); shadeInterference();
  if (report.attribution) { await loadAttribution(); prepareAttribution(); }
  await painted();
  await loadResponses();
  prepareShares(); prepareWhatIf();
  document.body.dataset.state = "ready";
}

/** Resolved when every part of the page answers. */
const ready = start().catch(error => {
  const text = "The figures of this page cannot be drawn by this browser: " + error.message + ". Every number is in the tables.";
  byId("answer").append(element("p", text, { class: "caution", role: "alert" }));
  throw error;
});
