// Reading rates over time by pointer and keys. The charts themselves stand in the page.

const SVG = "http://www.w3.org/2000/svg";

const steps = { rows: [], at: -1 };

function readStretch(at) {
  const stretches = plan.rates.stretches;
  steps.at = Math.max(0, Math.min(stretches.length - 1, at));
  const from = stretches[steps.at].from, to = steps.at + 1 < stretches.length ? stretches[steps.at + 1].from : 1;
  steps.rows.forEach(({ chart, now, output }, bore) => {
    const { width, height } = chart.viewBox.baseVal;
    now.setAttribute("d", "M" + width * from + " 0H" + width * to + "V" + height + "H" + width * from + "Z");
    output.textContent = plan.rates.bores[bore][steps.at];
  });
  byId("steps-reading").textContent = "From " + stretches[steps.at].words + ": "
    + steps.rows.map(({ name }, bore) => name + " " + plan.rates.bores[bore][steps.at]).join(", ") + ".";
}

function readTime(event) {
  const box = steps.rows[0].chart.getBoundingClientRect(), share = (event.clientX - box.left) / box.width;
  if (share < 0 || share > 1) return;
  const later = plan.rates.stretches.findIndex(stretch => stretch.from > share);
  const at = (later < 0 ? plan.rates.stretches.length : later) - 1;
  if (at !== steps.at) readStretch(at);
}

function showSteps() {
  const box = byId("steps");
  steps.rows = [...box.querySelectorAll(".rate-row")].map(row => {
    const chart = row.querySelector("svg"), now = document.createElementNS(SVG, "path");
    now.setAttribute("class", "now");
    chart.prepend(now);
    return { chart, now, output: row.querySelector(".rate-now"), name: row.querySelector(".rate-name span").textContent };
  });
  if (!steps.rows.length) return;
  box.addEventListener("pointermove", readTime);
  box.addEventListener("pointerdown", readTime);
  box.addEventListener("keydown", event => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by) return;
    readStretch(steps.at < 0 ? 0 : steps.at + by);
    event.preventDefault();
  });
}
