"use strict";
// Sorts a table by the column whose head is pressed, and shows only the rows that contain what is typed.
for (const table of document.querySelectorAll("table")) {
  const body = table.tBodies[0];
  const heads = Array.from(table.tHead.rows[0].cells);
  heads.forEach((head, column) => {
    head.querySelector("button").addEventListener("click", () => {
      const falling = head.getAttribute("aria-sort") === "ascending";
      heads.forEach((other) => other.removeAttribute("aria-sort"));
      head.setAttribute("aria-sort", falling ? "descending" : "ascending");
      const key = (row) => {
        const text = row.cells[column].textContent;
        const number = parseFloat(text);
        return Number.isNaN(number) ? text : number;
      };
      const order = (a, b) =>
        typeof a === "number" && typeof b === "number" ? a - b : String(a).localeCompare(String(b));
      const rows = Array.from(body.rows).sort((a, b) => order(key(a), key(b)));
      body.append(...(falling ? rows.reverse() : rows));
    });
  });
}
for (const input of document.querySelectorAll("input[data-filters]")) {
  const body = document.getElementById(input.dataset.filters).tBodies[0];
  input.addEventListener("input", () => {
    const wanted = input.value.toLowerCase();
    for (const row of body.rows) row.hidden = !row.textContent.toLowerCase().includes(wanted);
  });
}
