// Puts the figures on the page and keeps them in step with its width, colours and printing.

async function begin() {
  if (plan.map) await showMap();
  if (plan.rates) { await showRates(); showSteps(); }
  if (plan.curves) { showCurves(); showNumbers(); }
  const again = () => { if (view.layer) resizeMap(); if (plan.curves) { drawCurves(); drawNumbers(); } };
  for (const id of ["map-controls"]) byId(id)?.addEventListener("submit", event => event.preventDefault());
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
  matchMedia("print").addEventListener("change", again);
  let width = innerWidth;
  addEventListener("resize", () => { if (innerWidth !== width) { width = innerWidth; again(); } });
  document.body.dataset.ready = "yes";
}

const ready = begin();
