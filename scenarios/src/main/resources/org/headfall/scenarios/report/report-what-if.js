// What if: the reader changes rates, and heads, limits and hydrographs follow.

const whatIf = { changes: [], result: null, milliseconds: 0 };

const isChanged = change => change.factor !== 1 || change.added !== 0;
const rateBores = () => report.whatIf.takers.map((taker, cause) => ({ taker, cause })).filter(({ taker }) => taker.rule === "RATE");

/** Head of a site at the changed rates, or null if nothing is changed. */
function whatIfHead(name) {
  if (!whatIf.result || !whatIf.changes.some(isChanged)) return null;
  const station = report.whatIf.stations.indexOf(name);
  return station < 0 ? null : headUnder(station, whatIf.result.drawdown);
}

/** Changed discharge of a cause on a recorded day. */
function changedRate(cause, i) {
  const change = whatIf.changes[cause], flow = series.get(report.whatIf.stations[cause]).flow;
  const before = flow ? flow[i] : 0;
  return responses.days[i] < change.from ? before : before * change.factor + change.added;
}

function recompute() {
  const began = performance.now();
  whatIf.result = superpose(whatIf.changes);
  const changed = whatIf.changes.some(isChanged);
  const outcomes = report.whatIf.limits.map(condition => changed ? judge(condition, whatIf.changes, whatIf.result.drawdown)
    : outcomeOfRun(condition));
  const cautions = whatIfCautions();
  showOutcomes(outcomes, cautions); showChangedHeads();
  drawHydrograph();
  whatIf.milliseconds = performance.now() - began;
}

/** Rules that bind at the changed rates, and others that this page cannot follow. */
function whatIfCautions() {
  const cautions = [];
  if (!whatIf.changes.some(isChanged)) return cautions;
  report.whatIf.takers.forEach((taker, cause) => {
    const name = report.whatIf.stations[cause], site = siteNamed(name);
    if (taker.rule === "OTHER") cautions.push(name + " follows a rule that this page does not know; its discharge is kept as in the run.");
    if (taker.rule !== "RATE") return;
    const day = firstBelowLowest(taker, cause);
    if (day !== null) cautions.push(name + " would reach its lowest level on " + dateWords(isoOfDay(day)) + ": its pump would be cut back.");
    else if (site && site.states.some(state => state[0] === "CUT_BACK")) cautions.push(name + " is cut back in the run already; its rate is that of the run times your factor.");
  });
  report.whatIf.stations.forEach((name, station) => {
    const site = siteNamed(name);
    if (!site || site.top === null) return;
    const head = headUnder(station, whatIf.result.drawdown), i = head.findIndex(value => value < site.top);
    if (i >= 0) cautions.push("At " + name + " head would fall below the top of the aquifer on " + dateWords(isoOfDay(responses.days[i])) + ".");
  });
  return cautions;
}

/** First day on which a pumped bore stands below its lowest level at the changed rate, or null. */
function firstBelowLowest(taker, cause) {
  const record = series.get(report.whatIf.stations[cause]), count = responses.days.length;
  if (taker.lowestLevel === null || !record.level) return null;
  const loss = q => taker.linearLoss * q + taker.quadraticLoss * q * q;
  for (let i = 1; i < count; i++) {
    const q = changedRate(cause, i), level = record.head[i] - whatIf.result.drawdown[cause * count + i] - loss(q);
    if (q > FLOWING && level < taker.lowestLevel - 0.005) return responses.days[i];
  }
  return null;
}

const limitFigure = (value, limit) => limit.unit === "m" ? heightWords(value)
  : limit.unit === "m/yr" ? numberWords(inHeightUnit(value), heightUnit() === "m" ? 3 : 2) + "\u00a0" + heightUnit() + "/yr"
    : numberWords(value, 2) + "\u00a0" + limit.unit;

/** How many limits are kept; a limit that holds at several places is one limit. */
function keptWords(outcomes) {
  const names = list => new Set(list.map(outcome => outcome.limit.name)).size, lost = outcomes.filter(outcome => outcome.state !== "holds");
  const all = names(outcomes), kept = all - names(lost), places = outcomes.length;
  return kept + " of " + all + (all === 1 ? " limit is" : " limits are") + " kept"
    + (places > all ? ", those at " + (places - lost.length) + " of " + places + " places" : "");
}

function showOutcomes(outcomes, cautions) {
  byId("what-if-limits").parentElement.hidden = outcomes.length === 0;
  const body = byId("what-if-limits").tBodies[0], hold = outcomes.filter(outcome => outcome.state === "holds").length;
  body.replaceChildren(...outcomes.map(({ limit, worst, on, crossed, state }) => {
    const row = element("tr"), words = state === "crossed" ? "crossed from " + dateWords(isoOfDay(crossed)) : state;
    row.append(element("th", limit.name, { scope: "row", dir: "auto" }),
      element("td", words, { class: { holds: "good", crossed: "bad", undecided: "close" }[state] }), element("td", limit.site, { dir: "auto" }),
      element("td", limitFigure(limit.allowed, limit), { class: "number" }), element("td", limitFigure(limit.reached, limit), { class: "number" }),
      element("td", limitFigure(worst, limit), { class: "number" }), element("td", dateWords(isoOfDay(on))));
    return row;
  }));
  const changed = whatIf.changes.filter(isChanged).length;
  document.body.classList.toggle("changed", changed > 0);
  byId("what-if-answer").textContent = (changed === 0 ? "Rates as in the run: " : "With " + (changed === 1 ? "one bore" : changed + " bores") + " changed, ")
    + (outcomes.length ? keptWords(outcomes) : "no limit is judged") + "."
    + (report.whatIf.notJudged.length ? " What limits say at " + (report.whatIf.notJudged.length === 1 ? "one more place" : report.whatIf.notJudged.length + " more places")
      + " only a run can judge, see below." : "")
    + (cautions.length ? " Only indicative: see below." : "");
  byId("what-if-cautions").replaceChildren(...cautions.map(text => element("li", text, { dir: "auto" })));
}

function showChangedHeads() {
  const last = responses.days.length - 1, count = responses.days.length;
  const rows = report.whatIf.stations.map((name, station) => {
    const record = series.get(name), fall = whatIf.result.drawdown[station * count + last];
    let most = 0;
    for (let i = 0; i < count; i++) if (Math.abs(whatIf.result.drawdown[station * count + i]) > Math.abs(most)) most = whatIf.result.drawdown[station * count + i];
    return [name, numberWords(record.head[last], 2), numberWords(record.head[last] - fall, 2), numberWords(inHeightUnit(-fall), heightDecimals()), numberWords(inHeightUnit(-most), heightDecimals())];
  });
  fillTable(byId("what-if-heads"), "Heads at the changed rates", ["Site", "Head at the end, run (m)", "Head at the end, what if (m)",
    "Change at the end (" + heightUnit() + ")", "Largest change (" + heightUnit() + ")"], rows);
}

/** Limits that only a run can judge, with the reason of each. */
function showNotJudged() {
  byId("what-if-not-judged").hidden = report.whatIf.notJudged.length === 0;
  byId("what-if-not-judged").querySelector("ul").replaceChildren(...report.whatIf.notJudged.map(({ limit, reason }) => {
    const { name, site } = report.limits[limit];
    return element("li", name + ", at " + site + ": " + reason, { dir: "auto" });
  }));
}

/** The row of controls of a bore. */
function boreRow({ taker, cause }) {
  const name = report.whatIf.stations[cause], row = element("tr"), change = whatIf.changes[cause];
  const slider = element("input", null, { type: "range", min: 0, max: 200, step: 1, "aria-label": "Rate of " + name + " in per cent of the run" });
  const number = element("input", null, { type: "number", min: 0, step: "any", "aria-label": "Mean rate of " + name });
  const on = element("input", null, { type: "checkbox", "aria-label": name + " works" }), from = element("select", null, { "aria-label": "Change of " + name + " from" });
  const cell = (...parts) => { const td = element("td"); td.append(...parts); return td; };
  const run = element("td", "", { class: "number" });
  const pumped = () => meanRate(cause, change.from);
  from.append(...whatIfDates().map(day => option(dateWords(isoOfDay(day)), day)));
  const show = () => {
    const mean = pumped(), rate = mean * change.factor + change.added;
    run.textContent = flowWords(mean);
    number.value = +inFlowUnit(rate).toFixed(flowDecimals());
    slider.value = mean > FLOWING ? Math.round(change.factor * 100) : Math.round(inFlowUnit(rate) / inFlowUnit(fullRate()) * 100);
    slider.setAttribute("aria-valuetext", flowWords(rate));
    on.checked = rate > FLOWING; from.value = change.from;
    row.classList.toggle("changed", isChanged(change));
  };
  const ask = rate => {
    const mean = pumped();
    change.factor = mean > FLOWING ? rate / mean : 1;
    change.added = mean > FLOWING ? 0 : rate;
    show(); recompute();
  };
  slider.addEventListener("input", () => ask((pumped() > FLOWING ? pumped() : fullRate()) * slider.value / 100));
  number.addEventListener("change", () => ask(Math.max(0, +number.value || 0) / UNITS.flow.of[flowUnit()]));
  on.addEventListener("change", () => ask(on.checked ? Math.max(pumped(), pumped() > FLOWING ? 0 : fullRate()) : 0));
  from.addEventListener("change", () => { change.from = +from.value; show(); recompute(); });
  row.append(element("th", name, { scope: "row", dir: "auto" }), run, cell(slider), cell(number), cell(on), cell(from));
  whatIf.rows.push(show);
  return row;
}

/** Rate that the slider of a bore without a rate reaches at 100 %: the largest mean of the others, or 10 L/s. */
const fullRate = () => Math.max(0, ...rateBores().map(({ cause }) => meanRate(cause, 0))) || 864;

/** Days from which a change may begin: the start and each first of the month once a year. */
function whatIfDates() {
  const end = responses.days[responses.days.length - 1], years = Math.floor(end / 365.25), first = report.start;
  return Array.from({ length: Math.max(1, years) }, (_, k) => Math.round(dayOfIso((+first.slice(0, 4) + k) + first.slice(4).replace("02-29", "02-28"))));
}

/** Lines for a table of changes: what the changed bores do from when on. Changes hold until the next line. */
function whatIfChanges() {
  const lines = [["name", "from", "rate (L/s)", "operation", "remark"]], pieces = responses.pieces, count = pieces.length - 1;
  rateBores().forEach(({ cause }) => {
    const change = whatIf.changes[cause], name = report.whatIf.stations[cause], remark = "what if, from a report";
    if (!isChanged(change)) return;
    if (change.factor === 0 && change.added === 0) { lines.push([name, isoOfDay(change.from), "", "off", remark]); return; }
    let former = null;
    for (let k = 0; k < count; k++) {
      if (pieces[k + 1] <= change.from) continue;
      const mean = (responses.begin[cause * count + k] + responses.end[cause * count + k]) / 2 * change.factor + change.added;
      const rate = (mean / 86.4).toFixed(4), day = isoOfDay(Math.max(pieces[k], change.from));
      if (rate === former) continue;
      if (lines[lines.length - 1][0] === name && lines[lines.length - 1][1] === day) lines.pop();
      lines.push([name, day, rate, "", remark]);
      former = rate;
    }
  });
  return lines;
}

function masterRow() {
  const row = element("tr"), cell = element("td"), proposed = rateBores().filter(({ taker }) => taker.proposed);
  const slider = element("input", null, { type: "range", min: 0, max: 200, step: 1, value: 100, "aria-label": "Rate of all proposed bores in per cent of the run" });
  const share = element("td", "100\u00a0%", { class: "number" });
  slider.addEventListener("input", () => {
    share.textContent = slider.value + "\u00a0%";
    proposed.forEach(({ cause }) => { if (meanRate(cause, whatIf.changes[cause].from) > FLOWING) whatIf.changes[cause].factor = slider.value / 100; });
    whatIf.rows.forEach(show => show()); recompute();
  });
  cell.append(slider);
  row.append(element("th", "All proposed bores", { scope: "row" }), element("td", ""), cell, share, element("td", ""), element("td", ""));
  whatIf.showMaster = () => { slider.value = 100; share.textContent = "100\u00a0%"; };
  return proposed.length > 1 ? row : "";
}

function prepareWhatIf() {
  if (!report.whatIf) return;
  whatIf.changes = report.whatIf.takers.map(() => ({ ...UNCHANGED }));
  whatIf.rows = [];
  byId("what-if-bores").tBodies[0].append(masterRow(), ...rateBores().map(boreRow));
  whatIf.rows.forEach(show => show());
  byId("what-if-reset").addEventListener("click", () => {
    whatIf.changes.forEach(change => Object.assign(change, UNCHANGED));
    whatIf.showMaster(); whatIf.rows.forEach(show => show()); recompute();
    say("All rates are those of the run again.");
  });
  byId("what-if-save").addEventListener("click", () => {
    save("changes-what-if.csv", whatIfChanges().map(line => line.map(csvField).join(",")).join("\r\n") + "\r\n");
  });
  unitListeners.push(() => { whatIf.rows.forEach(show => show()); recompute(); });
  showNotJudged();
  recompute();
}
