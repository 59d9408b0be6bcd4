// Tables: sorting, copying, saving.

function sortTable(table, column, head) {
  const down = head.getAttribute("aria-sort") === "ascending", rows = Array.from(table.tBodies[0].rows);
  const key = row => { const cell = row.cells[column], value = cell.dataset.value; return value ? (Number.isNaN(+value) ? value : +value) : cell.textContent; };
  rows.sort((a, b) => {
    const x = key(a), y = key(b), numbers = typeof x === "number" && typeof y === "number";
    return (down ? -1 : 1) * (numbers ? x - y : String(x).localeCompare(String(y), "en", { numeric: true }));
  });
  table.tBodies[0].append(...rows);
  table.querySelectorAll("thead th").forEach(other => other.removeAttribute("aria-sort"));
  head.setAttribute("aria-sort", down ? "descending" : "ascending");
}

/** Rows of a table as shown, with plain minus signs and no spaces inside numbers. */
function tableTexts(table) {
  const plain = text => text.replace(/\s+/g, " ").trim();
  const cells = Array.from(table.tHead.rows[0].cells, th => plain((th.querySelector("button") || th.firstChild || th).textContent)
    + (th.querySelector(".unit") ? " (" + th.querySelector(".unit").textContent + ")" : ""));
  const body = Array.from(table.tBodies[0].rows, row => Array.from(row.cells, cell => cell.classList.contains("number")
    ? cell.textContent.replace(/\u202f/g, "").replace(MINUS, "-").replace(DASH, "") : plain(cell.textContent)));
  return [cells, ...body];
}

/** A field of a CSV file; words that a spreadsheet would take for a formula are kept as words. */
function csvField(text) {
  const safe = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? "'" + text : text;
  return /[",\n\r]/.test(safe) ? '"' + safe.replace(/"/g, '""') + '"' : safe;
}

function save(name, text) {
  const link = element("a", null, { download: name, href: URL.createObjectURL(new Blob(["\ufeff" + text], { type: "text/csv" })) });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Puts a text on the clipboard, which some browsers have only for pages from a server. */
const copied = text => navigator.clipboard ? navigator.clipboard.writeText(text) : Promise.reject(new Error("no clipboard"));

function prepareTable(box) {
  const table = box.querySelector("table"), controls = element("div", null, { class: "controls" });
  table.querySelectorAll("thead th").forEach((head, i) => {
    const unit = head.querySelector(".unit"), button = element("button", head.firstChild.textContent.trim(), { type: "button" });
    head.replaceChildren(button);
    if (unit) head.append(unit);
    button.addEventListener("click", () => sortTable(table, i, head));
  });
  const copy = element("button", "Copy", { type: "button" }), store = element("button", "Save as CSV", { type: "button" });
  copy.setAttribute("aria-label", "Copy the table " + table.caption.textContent);
  store.setAttribute("aria-label", "Save as CSV the table " + table.caption.textContent);
  copy.addEventListener("click", () => copied(tableTexts(table).map(row => row.join("\t")).join("\n"))
    .then(() => { copy.textContent = "Copied"; say("Table copied."); }, () => { copy.textContent = "Not allowed"; say("The browser did not allow copying."); }));
  store.addEventListener("click", () => save(table.id + ".csv", tableTexts(table).map(row => row.map(csvField).join(",")).join("\r\n") + "\r\n"));
  controls.append(copy, store);
  box.append(controls);
}
