// Units. Discharges are kept in m³/d and heights in m; the reader chooses what is shown, everywhere at once. Levels above
// datum stay in metres, for a level is no pressure.

const UNITS = {
  flow: { of: { "L/s": 1 / 86.4, "ML/d": 1e-3, "ML/yr": 0.36525, "m\u00b3/d": 1 }, chosen: "L/s" },
  height: { of: { "m": 1, "kPa": report.kilopascalsPerMetre }, chosen: "m" },
};
const unitListeners = [];

const flowUnit = () => UNITS.flow.chosen;
const heightUnit = () => UNITS.height.chosen;
const inFlowUnit = value => value * UNITS.flow.of[flowUnit()];
const inHeightUnit = value => value * UNITS.height.of[heightUnit()];
const flowDecimals = () => ({ "L/s": 2, "ML/d": 3, "ML/yr": 1, "m\u00b3/d": 0 })[flowUnit()];
const heightDecimals = () => heightUnit() === "m" ? 2 : 1;
const flowWords = value => numberWords(inFlowUnit(value), flowDecimals()) + "\u00a0" + flowUnit();
const heightWords = value => numberWords(inHeightUnit(value), heightDecimals()) + "\u00a0" + heightUnit();
const levelWords = value => numberWords(value, 2) + "\u00a0m";

/** How a quantity of the page is shown: unit, factor, decimals. Others stay as they are. */
const SHOWN = {
  FLOW: () => [flowUnit(), UNITS.flow.of[flowUnit()], flowDecimals()],
  HEIGHT: () => [heightUnit(), UNITS.height.of[heightUnit()], heightDecimals()],
  HEIGHT_RATE: () => [heightUnit() + "/yr", UNITS.height.of[heightUnit()], heightUnit() === "m" ? 3 : 2],
};

/** Shows every table and sentence in the chosen units. */
function showUnits() {
  for (const table of document.querySelectorAll("table")) {
    if (!table.tHead) continue;
    table.querySelectorAll("thead th").forEach((head, i) => {
      const shown = SHOWN[head.dataset.quantity];
      if (!shown) return;
      const [unit, factor, decimals] = shown();
      head.querySelector(".unit").textContent = unit;
      for (const row of table.tBodies[0].rows) {
        const value = row.cells[i].dataset.value;
        if (value) row.cells[i].textContent = numberWords(value * factor, decimals);
      }
    });
  }
  for (const figure of document.querySelectorAll("data[data-quantity]")) {
    const shown = SHOWN[figure.dataset.quantity];
    if (!shown) continue;
    const [unit, factor, decimals] = shown();
    const shownDecimals = figure.dataset.error === "true" ? Math.max(2, decimals + 1) : decimals;
    figure.textContent = numberWords(figure.value * factor, shownDecimals) + "\u00a0" + unit;
  }
}

function chooseUnit(kind, unit) {
  UNITS[kind].chosen = unit;
  document.querySelectorAll('select[data-unit="' + kind + '"]').forEach(select => { select.value = unit; });
  showUnits();
  unitListeners.forEach(listener => listener(kind));
}

function prepareUnits() {
  for (const select of document.querySelectorAll("select[data-unit]")) {
    const kind = select.dataset.unit;
    select.append(...Object.keys(UNITS[kind].of).map(unit => option(unit, unit)));
    select.addEventListener("change", () => chooseUnit(kind, select.value));
  }
}
